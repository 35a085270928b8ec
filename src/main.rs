//! The binary: everything it does is in the library.

fn main() -> std::process::ExitCode {
    faultwright::command_line::run().into()
}

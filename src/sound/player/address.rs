//! Where a sound server may listen, by what the surroundings say.
//!
//! Names and order are those of the PulseAudio server's own clients, which PipeWire answers too: `PULSE_SERVER` alone where it
//! is set, else the folders of the session, else that of the machine. Servers on other machines are not spoken to.

use std::ffi::OsString;
use std::path::PathBuf;

/// The socket of a server that serves the whole machine.
const OF_THE_MACHINE: &str = "/run/pulse/native";

/// A place where a sound server may listen, and the file with which one shows who one is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Address {
    /// The socket.
    pub socket: PathBuf,
    /// The server's cookie, in the order in which it is looked for.
    pub cookies: Vec<PathBuf>,
}

impl Address {
    /// Every place that the surroundings name; `look` finds a variable of the environment.
    #[must_use]
    pub fn all(look: impl Fn(&str) -> Option<OsString>) -> Vec<Self> {
        let folder = |name: &str| look(name).filter(|value| !value.is_empty()).map(PathBuf::from);
        let home = folder("HOME");
        let config =
            folder("XDG_CONFIG_HOME").or_else(|| home.as_ref().map(|home| home.join(".config")));
        let cookies: Vec<PathBuf> = [
            folder("PULSE_COOKIE"),
            config.map(|config| config.join("pulse/cookie")),
            home.map(|home| home.join(".pulse-cookie")),
        ]
        .into_iter()
        .flatten()
        .collect();
        let sockets: Vec<PathBuf> = match look("PULSE_SERVER").filter(|value| !value.is_empty()) {
            Some(servers) => {
                servers.to_string_lossy().split_whitespace().filter_map(local).collect()
            }
            None => [
                folder("PULSE_RUNTIME_PATH").map(|folder| folder.join("native")),
                folder("XDG_RUNTIME_DIR").map(|folder| folder.join("pulse/native")),
                Some(PathBuf::from(OF_THE_MACHINE)),
            ]
            .into_iter()
            .flatten()
            .collect(),
        };
        sockets.into_iter().map(|socket| Self { socket, cookies: cookies.clone() }).collect()
    }
}

/// The socket of a server on this machine: `{machine}unix:/path`, `unix:/path` or `/path`.
fn local(server: &str) -> Option<PathBuf> {
    let server = match server.strip_prefix('{') {
        Some(rest) => rest.split_once('}')?.1,
        None => server,
    };
    let path = server.strip_prefix("unix:").unwrap_or(server);
    path.starts_with('/').then(|| PathBuf::from(path))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sockets(set: &[(&str, &str)]) -> Vec<String> {
        let look = |name: &str| {
            set.iter().find(|(key, _)| *key == name).map(|(_, value)| OsString::from(value))
        };
        let found = Address::all(look);
        found.iter().map(|address| address.socket.display().to_string()).collect()
    }

    #[test]
    fn the_session_comes_before_the_machine_and_a_named_server_alone() {
        assert_eq!(sockets(&[]), ["/run/pulse/native"]);
        let session = [("XDG_RUNTIME_DIR", "/run/user/7"), ("PULSE_RUNTIME_PATH", "/tmp/p")];
        assert_eq!(
            sockets(&session),
            ["/tmp/p/native", "/run/user/7/pulse/native", "/run/pulse/native"]
        );
        assert_eq!(sockets(&[session[0], ("PULSE_SERVER", "unix:/a/b")]), ["/a/b"]);
        assert_eq!(
            sockets(&[("PULSE_SERVER", "{0f}unix:/a tcp:elsewhere /b {broken")]),
            ["/a", "/b"]
        );
        assert!(sockets(&[("PULSE_SERVER", "elsewhere")]).is_empty());
    }

    #[test]
    fn the_cookie_is_looked_for_where_the_server_puts_it() {
        let look = |name: &str| (name == "HOME").then(|| OsString::from("/home/w"));
        let cookies = &Address::all(look)[0].cookies;
        assert_eq!(
            cookies,
            &[PathBuf::from("/home/w/.config/pulse/cookie"), "/home/w/.pulse-cookie".into()]
        );
    }
}

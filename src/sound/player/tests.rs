//! The player against servers that are not there, refuse, talk nonsense or go away.

use super::{Address, Player, State};
use crate::physics::stroke::Impact;
use crate::sound::engine::{EngineRun, Moment};
use crate::sound::passage::{Part, Passage};
use crate::units::{Joules, Seconds};
use pulseaudio::protocol::command::{AuthReply, CreatePlaybackStreamReply, SetClientNameReply};
use pulseaudio::protocol::{self, Command, SampleFormat, SampleSpec};
use std::io::{BufReader, Read as _, Write as _};
use std::os::unix::net::{UnixListener, UnixStream};
use std::path::Path;
use std::sync::Arc;
use std::thread;
use std::time::Duration;

fn click() -> Passage {
    let energy = Joules(1e-3);
    Passage::new(vec![Part::Click(Impact { at: Seconds(0.0), speed_m_per_s: 0.4, energy })])
}

fn engine() -> Passage {
    let moments = vec![Moment { at_s: 0.0, rpm: 700.0, load: 0.2 }];
    Passage::new(vec![Part::Engine(EngineRun {
        cylinders: 4,
        moments,
        is_rough: false,
        is_fired: true,
    })])
}

fn player_for(socket: &Path) -> Player {
    let address = Address { socket: socket.to_owned(), cookies: Vec::new() };
    Player::new(vec![address], 1.0, Arc::new(|| {}))
}

/// Waits until the player is in a state; the limit is far beyond what any machine needs.
fn until(player: &Player, state: State) {
    for _ in 0..3_000 {
        if player.state() == state {
            return;
        }
        thread::sleep(Duration::from_millis(10));
    }
    panic!("{:?} instead of {state:?}", player.state());
}

/// A server that does something with the first who comes, and then is gone.
fn serve(
    folder: &Path,
    with: impl FnOnce(UnixStream) + Send + 'static,
) -> (std::path::PathBuf, thread::JoinHandle<()>) {
    let path = folder.join("native");
    let listener = UnixListener::bind(&path).unwrap();
    let serving = thread::spawn(move || with(listener.accept().unwrap().0));
    (path, serving)
}

#[test]
fn no_server_is_no_error() {
    let folder = tempfile::tempdir().unwrap();
    let player = player_for(&folder.path().join("native"));
    assert_eq!(player.state(), State::Rests);
    player.play(click());
    until(&player, State::NoServer);
    // Nor is none at all.
    let nowhere = Player::new(Vec::new(), 1.0, Arc::new(|| {}));
    nowhere.play(click());
    until(&nowhere, State::NoServer);
}

#[test]
fn a_socket_that_nobody_serves_is_no_server() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("native");
    drop(UnixListener::bind(&path).unwrap());
    let player = player_for(&path);
    player.play(click());
    until(&player, State::NoServer);
}

#[test]
fn a_server_that_hangs_up_or_talks_nonsense_is_one_that_refuses() {
    for said in [
        Vec::new(),
        b"HTTP/1.1 400 Bad Request\r\n\r\n".to_vec(),
        vec![0; 4_096],
        vec![0xFF; 4_096],
        // A message for us, of ten bytes that mean nothing.
        [&[0, 0, 0, 10, 0xFF, 0xFF, 0xFF, 0xFF][..], &[0; 12], &[b'L'; 10]].concat(),
    ] {
        let folder = tempfile::tempdir().unwrap();
        let (path, serving) = serve(folder.path(), move |mut socket| {
            let _ = socket.write_all(&said);
        });
        let player = player_for(&path);
        player.play(click());
        until(&player, State::Refused);
        serving.join().unwrap();
        // The next sound tries again.
        player.play(click());
        until(&player, State::NoServer);
    }
}

#[test]
fn a_server_that_says_nothing_is_not_waited_for() {
    let folder = tempfile::tempdir().unwrap();
    let (path, serving) = serve(folder.path(), |mut socket| {
        // It reads until the other side leaves.
        let _ = socket.read_to_end(&mut Vec::new());
    });
    let player = player_for(&path);
    player.play(click());
    until(&player, State::Refused);
    serving.join().unwrap();
}

/// Takes a client in as a server does, and tells which channel it got.
fn take_in(socket: UnixStream) -> BufReader<UnixStream> {
    let version = protocol::MAX_VERSION;
    let mut socket = BufReader::new(socket);
    let (number, hello) = protocol::read_command_message(&mut socket, version).unwrap();
    assert!(matches!(hello, Command::Auth(auth) if auth.cookie.len() == 256));
    let answer = AuthReply { version, ..AuthReply::default() };
    protocol::write_reply_message(socket.get_mut(), number, &answer, version).unwrap();
    let (number, name) = protocol::read_command_message(&mut socket, version).unwrap();
    assert!(matches!(name, Command::SetClientName(_)));
    let answer = SetClientNameReply { client_id: 1 };
    protocol::write_reply_message(socket.get_mut(), number, &answer, version).unwrap();
    let (number, create) = protocol::read_command_message(&mut socket, version).unwrap();
    let Command::CreatePlaybackStream(asked) = create else { panic!("{create:?}") };
    let spec = SampleSpec { format: SampleFormat::Float32Le, channels: 1, sample_rate: 48_000 };
    assert_eq!(asked.sample_spec, spec);
    let answer = CreatePlaybackStreamReply {
        channel: 5,
        requested_bytes: 4_800,
        sample_spec: spec,
        ..CreatePlaybackStreamReply::default()
    };
    protocol::write_reply_message(socket.get_mut(), number, &answer, version).unwrap();
    socket
}

#[test]
fn a_server_gets_as_much_sound_as_it_asks_for_and_may_go_away() {
    let folder = tempfile::tempdir().unwrap();
    let (path, serving) = serve(folder.path(), |socket| {
        let mut socket = take_in(socket);
        let mut got = 0;
        while got < 4_800 {
            let head = protocol::read_descriptor(&mut socket).unwrap();
            assert_eq!(head.channel, 5);
            let mut sound = vec![0; head.length as usize];
            socket.read_exact(&mut sound).unwrap();
            got += head.length;
        }
        assert_eq!(got, 4_800);
    });
    let player = player_for(&path);
    player.play(engine());
    serving.join().unwrap();
    until(&player, State::Lost);
}

#[test]
fn a_player_that_is_dropped_hangs_up() {
    let folder = tempfile::tempdir().unwrap();
    let (path, serving) = serve(folder.path(), |socket| {
        let mut socket = take_in(socket);
        let _ = socket.read_to_end(&mut Vec::new());
    });
    let player = player_for(&path);
    player.play(engine());
    until(&player, State::Plays);
    drop(player);
    serving.join().unwrap();
}

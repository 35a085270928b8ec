//! Messages to and from the sound server over its socket.

use pulseaudio::protocol::{self, Command, DESCRIPTOR_SIZE, ProtocolError};
use std::io::{self, Cursor, ErrorKind, Read as _, Write as _};
use std::os::unix::net::UnixStream;
use std::path::Path;
use std::time::Duration;

/// How long a look for a message waits. New orders are heard of after that at the latest.
pub const TICK: Duration = Duration::from_millis(10);
/// How long a server may leave us standing with a message that we have for it.
const WRITES_WITHIN: Duration = Duration::from_secs(2);
/// Longest message that is taken [bytes]; the longest that we ask for has a few hundred.
const LONGEST: usize = 64 * 1024;

/// The channel of messages that are commands and not sound.
const COMMANDS: u32 = u32::MAX;

/// A connection to a sound server.
pub struct Wire {
    socket: UnixStream,
    /// What has come and is not a whole message yet.
    inbox: Vec<u8>,
    /// Version of the protocol that both sides speak.
    pub version: u16,
}

/// A message from the server; a reply's contents stand behind what was read.
pub struct Message {
    pub number: u32,
    pub command: Command,
    pub rest: Cursor<Vec<u8>>,
}

impl Wire {
    pub fn open(path: &Path) -> io::Result<Self> {
        let socket = UnixStream::connect(path)?;
        socket.set_read_timeout(Some(TICK))?;
        socket.set_write_timeout(Some(WRITES_WITHIN))?;
        Ok(Self { socket, inbox: Vec::new(), version: protocol::MAX_VERSION })
    }

    pub fn send(&mut self, number: u32, command: &Command) -> Result<(), ProtocolError> {
        let mut message = Vec::new();
        protocol::write_command_message(&mut message, number, command, self.version)?;
        Ok(self.socket.write_all(&message)?)
    }

    /// Sends a piece of sound, as bytes.
    pub fn send_sound(&mut self, channel: u32, sound: &[u8]) -> Result<(), ProtocolError> {
        protocol::write_memblock(&mut self.socket, channel, sound, 0)
    }

    /// The next message, if one comes within a [`TICK`].
    pub fn next(&mut self) -> Result<Option<Message>, ProtocolError> {
        if let Some(message) = self.whole()? {
            return Ok(Some(message));
        }
        let mut piece = [0_u8; 4096];
        match self.socket.read(&mut piece) {
            Ok(0) => Err(io::Error::from(ErrorKind::UnexpectedEof).into()),
            Ok(count) => {
                self.inbox.extend_from_slice(&piece[..count]);
                self.whole()
            }
            Err(error) if is_patience(error.kind()) => Ok(None),
            Err(error) => Err(error.into()),
        }
    }

    /// The first whole message of what has come. What is none of ours is left out.
    fn whole(&mut self) -> Result<Option<Message>, ProtocolError> {
        while self.inbox.len() >= DESCRIPTOR_SIZE {
            let head = protocol::read_descriptor(&mut Cursor::new(&self.inbox[..DESCRIPTOR_SIZE]))?;
            let length = usize::try_from(head.length).unwrap_or(usize::MAX);
            if length > LONGEST {
                return Err(ProtocolError::Invalid(format!("a message of {length} bytes")));
            }
            let end = DESCRIPTOR_SIZE + length;
            if self.inbox.len() < end {
                break;
            }
            let mut contents: Vec<u8> = self.inbox.drain(..end).collect();
            contents.drain(..DESCRIPTOR_SIZE);
            if head.channel != COMMANDS {
                continue;
            }
            let mut rest = Cursor::new(contents);
            match Command::read_tag_prefixed(&mut rest, self.version) {
                Ok((number, command)) => return Ok(Some(Message { number, command, rest })),
                // News of a kind that the protocol's crate does not know: not for us.
                Err(ProtocolError::Unimplemented(..)) => {}
                Err(error) => return Err(error),
            }
        }
        Ok(None)
    }
}

const fn is_patience(kind: ErrorKind) -> bool {
    matches!(kind, ErrorKind::WouldBlock | ErrorKind::TimedOut | ErrorKind::Interrupted)
}

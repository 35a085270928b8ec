//! A passage at the sound server: a connection for as long as something sounds.

use super::orders::Orders;
use super::wire::{Message, TICK, Wire};
use super::{Address, LEAD, State};
use crate::sound::SAMPLES_PER_SECOND;
use crate::sound::mixer::Mixer;
use pulseaudio::protocol::command::{AuthReply, CreatePlaybackStreamReply};
use pulseaudio::protocol::stream::{BufferAttr, StreamFlags};
use pulseaudio::protocol::{
    AuthParams, ChannelMap, Command, DEFAULT_SINK, PlaybackStreamParams, Prop, Props,
    ProtocolError, PulseError, SampleFormat, SampleSpec, TagStructReader,
};
use std::fs::File;
use std::io::Read as _;
use std::path::PathBuf;
use std::time::Duration;

/// Bytes of a sample.
const SAMPLE_BYTES: u32 = 4;
/// Bytes of sound that the server holds for us: a fifth of a second, over which a busy machine may forget us.
const HELD_BYTES: u32 = SAMPLES_PER_SECOND / 5 * SAMPLE_BYTES;
/// Bytes with which it begins: a twentieth of a second, little enough for a click to follow its step at once.
const BEGINS_WITH_BYTES: u32 = HELD_BYTES / 4;
/// Bytes that it asks for at a time.
const PIECE_BYTES: u32 = HELD_BYTES / 10;
/// Bytes of a server's cookie.
const COOKIE_BYTES: usize = 256;
/// How long a server may take for an answer.
const ANSWERS_WITHIN: Duration = Duration::from_secs(2);
/// What we call ourselves, where the user sets the volume of programs.
const OUR_NAME: &std::ffi::CStr = c"Faultwright";

/// Numbers of our messages, by which answers are known.
const AUTH: u32 = 1;
const NAME: u32 = 2;
const CREATE: u32 = 3;

/// Plays what the mixer has until nothing sounds any more, and takes new orders meanwhile. `begun` is called when the
/// server takes sound.
///
/// # Errors
/// How it stands with the sound, when it could not be played to its end.
pub fn play(
    addresses: &[Address],
    mixer: &mut Mixer,
    orders: &Orders,
    begun: &dyn Fn(),
) -> Result<(), State> {
    let opened = addresses
        .iter()
        .find_map(|address| Some((Wire::open(&address.socket).ok()?, cookie(&address.cookies))));
    let (mut wire, cookie) = opened.ok_or(State::NoServer)?;
    let stream = introduce(&mut wire, cookie).map_err(|_| State::Refused)?;
    begun();
    feed(&mut wire, &stream, mixer, orders).map_err(|_| State::Lost)
}

/// The server's cookie; noughts where there is none, which a server that knows us by other means takes too.
fn cookie(files: &[PathBuf]) -> Vec<u8> {
    let read = |path: &PathBuf| {
        let mut cookie = vec![0; COOKIE_BYTES];
        File::open(path).ok()?.read_exact(&mut cookie).ok()?;
        Some(cookie)
    };
    files.iter().find_map(read).unwrap_or_else(|| vec![0; COOKIE_BYTES])
}

/// Shows who we are and asks for a stream.
fn introduce(wire: &mut Wire, cookie: Vec<u8>) -> Result<CreatePlaybackStreamReply, ProtocolError> {
    let auth =
        AuthParams { version: wire.version, supports_shm: false, supports_memfd: false, cookie };
    wire.send(AUTH, &Command::Auth(auth))?;
    let mut answer = answer(wire, AUTH)?;
    let auth: AuthReply = TagStructReader::new(&mut answer.rest, wire.version).read()?;
    wire.version = wire.version.min(auth.version);

    let mut names = Props::new();
    names.set(Prop::ApplicationName, OUR_NAME);
    wire.send(NAME, &Command::SetClientName(names))?;
    self::answer(wire, NAME)?;

    let mut names = Props::new();
    names.set(Prop::MediaName, OUR_NAME);
    let params = PlaybackStreamParams {
        sample_spec: SampleSpec {
            format: SampleFormat::Float32Le,
            channels: 1,
            sample_rate: SAMPLES_PER_SECOND,
        },
        channel_map: ChannelMap::mono(),
        sink_name: Some(DEFAULT_SINK.to_owned()),
        buffer_attr: BufferAttr {
            max_length: u32::MAX,
            target_length: HELD_BYTES,
            pre_buffering: BEGINS_WITH_BYTES,
            minimum_request_length: PIECE_BYTES,
            ..BufferAttr::default()
        },
        flags: StreamFlags { adjust_latency: true, ..StreamFlags::default() },
        props: names,
        ..PlaybackStreamParams::default()
    };
    wire.send(CREATE, &Command::CreatePlaybackStream(params))?;
    let mut answer = self::answer(wire, CREATE)?;
    TagStructReader::new(&mut answer.rest, wire.version).read()
}

/// Waits for the answer to a message of ours.
fn answer(wire: &mut Wire, number: u32) -> Result<Message, ProtocolError> {
    for _ in 0..ANSWERS_WITHIN.as_millis() / TICK.as_millis() {
        match wire.next()? {
            Some(message) if matches!(message.command, Command::Reply) => {
                if message.number == number {
                    return Ok(message);
                }
            }
            Some(Message { command: Command::Error(error), .. }) => {
                return Err(ProtocolError::ServerError(error));
            }
            Some(_) | None => {}
        }
    }
    Err(ProtocolError::Timeout)
}

/// Sends sound as the server asks for it.
fn feed(
    wire: &mut Wire,
    stream: &CreatePlaybackStreamReply,
    mixer: &mut Mixer,
    orders: &Orders,
) -> Result<(), ProtocolError> {
    let mut lead = LEAD;
    let mut asked_bytes = stream.requested_bytes;
    let mut samples = [0.0_f32; (PIECE_BYTES / SAMPLE_BYTES) as usize];
    let mut bytes = Vec::with_capacity(PIECE_BYTES as usize);
    // Whoever no longer wants any sound is not told of a server that goes away meanwhile.
    while orders.look(mixer) && !mixer.is_silent() {
        while asked_bytes >= SAMPLE_BYTES {
            let count = (asked_bytes / SAMPLE_BYTES).min(PIECE_BYTES / SAMPLE_BYTES);
            let piece = &mut samples[..count as usize];
            let silent = lead.min(count);
            lead -= silent;
            let (before, sound) = piece.split_at_mut(silent as usize);
            before.fill(0.0);
            mixer.fill(sound);
            bytes.clear();
            bytes.extend(piece.iter().flat_map(|sample| sample.to_le_bytes()));
            wire.send_sound(stream.channel, &bytes)?;
            asked_bytes -= count * SAMPLE_BYTES;
        }
        match wire.next()?.map(|message| message.command) {
            Some(Command::Request(request)) if request.channel == stream.channel => {
                asked_bytes = asked_bytes.saturating_add(request.length);
            }
            Some(Command::PlaybackStreamKilled(_)) => {
                return Err(ProtocolError::ServerError(PulseError::Killed));
            }
            Some(Command::Error(error)) => return Err(ProtocolError::ServerError(error)),
            Some(_) | None => {}
        }
    }
    Ok(())
}

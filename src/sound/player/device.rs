//! A passage at the system's own way out, where no sound server is spoken to: a stream for as long as something sounds.
//!
//! The system asks for samples in a thread of its own, which must not wait; so there is a stock between it and the player's
//! thread, which the one fills and the other takes from.

use super::orders::Orders;
use super::pace::Pace;
use super::{Address, LEAD, State};
use crate::sound::mixer::Mixer;
use cpal::traits::{DeviceTrait, HostTrait as _, StreamTrait as _};
use cpal::{Device, ErrorKind, FromSample, SampleFormat, SizedSample, Stream, StreamConfig};
use std::collections::VecDeque;
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::time::Duration;

/// Share of a second that the stock holds: over it a busy machine may forget us, and a click follows its step no later.
const STOCK_PER_SECOND: u32 = 10;
/// How long the player's thread waits to be asked for more before it looks for new orders.
const TICK: Duration = Duration::from_millis(20);
/// Ticks in which a device that goes on asks at least once: two seconds, after which it counts as gone.
const STANDS_STILL_AFTER: u32 = 100;

/// What the device may take next.
#[derive(Debug)]
struct Held {
    samples: VecDeque<f32>,
    is_gone: bool,
}

/// The stock between the player's thread and the device's.
#[derive(Debug)]
struct Stock {
    held: Mutex<Held>,
    taken: Condvar,
}

impl Stock {
    fn held(&self) -> MutexGuard<'_, Held> {
        self.held.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Fills the device's buffer; silence where the stock is empty.
    fn hand_out<T: SizedSample + FromSample<f32>>(&self, buffer: &mut [T], channels: usize) {
        let mut held = self.held();
        for frame in buffer.chunks_mut(channels.max(1)) {
            frame.fill(T::from_sample(held.samples.pop_front().unwrap_or(0.0)));
        }
        drop(held);
        self.taken.notify_one();
    }

    fn is_gone(&self) {
        self.held().is_gone = true;
        self.taken.notify_one();
    }
}

/// Plays what the mixer has until nothing sounds any more, and takes new orders meanwhile. `begun` is called when the
/// device takes sound. Where the sound goes is the system's own choice, so addresses say nothing here.
///
/// # Errors
/// How it stands with the sound, when it could not be played to its end.
pub fn play(
    _: &[Address],
    mixer: &mut Mixer,
    orders: &Orders,
    begun: &dyn Fn(),
) -> Result<(), State> {
    let device = cpal::default_host().default_output_device().ok_or(State::NoServer)?;
    let config = device.default_output_config().map_err(|_| State::Refused)?;
    let stock = Arc::new(Stock {
        held: Mutex::new(Held { samples: VecDeque::new(), is_gone: false }),
        taken: Condvar::new(),
    });
    let (format, config) = (config.sample_format(), StreamConfig::from(config));
    let stream = match format {
        SampleFormat::F32 => open::<f32>(&device, config, &stock),
        SampleFormat::I16 => open::<i16>(&device, config, &stock),
        SampleFormat::I32 => open::<i32>(&device, config, &stock),
        _ => return Err(State::Refused),
    }
    .and_then(|stream| stream.play().map(|()| stream))
    .map_err(|_| State::Refused)?;
    begun();
    let ended = feed(&stock, config.sample_rate, mixer, orders);
    drop(stream);
    ended
}

fn open<T: SizedSample + FromSample<f32>>(
    device: &Device,
    config: StreamConfig,
    stock: &Arc<Stock>,
) -> Result<Stream, cpal::Error> {
    let (takes, ends) = (Arc::clone(stock), Arc::clone(stock));
    let channels = usize::from(config.channels);
    device.build_output_stream(
        config,
        move |buffer: &mut [T], _: &cpal::OutputCallbackInfo| takes.hand_out(buffer, channels),
        move |error| match error.kind() {
            // It goes on, with a gap or somewhere else.
            ErrorKind::Xrun | ErrorKind::DeviceChanged | ErrorKind::RealtimeDenied => {}
            _ => ends.is_gone(),
        },
        None,
    )
}

/// Keeps the stock full until nothing sounds any more.
fn feed(
    stock: &Stock,
    device_per_second: u32,
    mixer: &mut Mixer,
    orders: &Orders,
) -> Result<(), State> {
    let full = (device_per_second / STOCK_PER_SECOND) as usize;
    let mut pace = Pace::of(device_per_second);
    let mut lead = LEAD;
    let mut stands_still = 0;
    // Whoever no longer wants any sound is not told of a device that goes away meanwhile.
    while orders.look(mixer) && !mixer.is_silent() {
        let mut held = stock.held();
        if held.is_gone || stands_still >= STANDS_STILL_AFTER {
            return Err(State::Lost);
        }
        while held.samples.len() < full {
            held.samples.push_back(pace.next(|| {
                if lead == 0 {
                    return mixer.next_sample();
                }
                lead -= 1;
                0.0
            }));
        }
        let (held, waited) =
            stock.taken.wait_timeout(held, TICK).unwrap_or_else(PoisonError::into_inner);
        drop(held);
        stands_still = if waited.timed_out() { stands_still + 1 } else { 0 };
    }
    Ok(())
}

//! What must be there before a window can open, asked in the order in which the engine would miss it.

use crate::wording::catalogue::Words;
use bevy::tasks::block_on;
use thiserror::Error;

/// Why the window did not open, or did not stay open.
#[derive(Debug, Error)]
pub enum OpeningError {
    /// No display is named or the named one does not answer.
    #[error("no display to open a window on, DISPLAY is {display:?}")]
    NoDisplay {
        /// What the environment says.
        display: Option<String>,
        /// Why the connection failed.
        #[source]
        source: Box<dyn std::error::Error + Send + Sync>,
    },
    /// A shared library that a window on this display needs is not installed.
    #[error("the display library {library} is not installed")]
    NoLibrary {
        /// The library's own name, as packages call it.
        library: &'static str,
        /// What the loader says.
        #[source]
        source: Box<dyn std::error::Error + Send + Sync>,
    },
    /// The display answers, but nothing can draw on it.
    #[error("no graphics driver answers")]
    NoGraphics,
    /// The graphics driver dropped the device while the window was open.
    #[error("the graphics driver was lost while the window was open: {why}")]
    GraphicsLost {
        /// What the driver says.
        why: String,
    },
    /// The graphics card has no memory left.
    #[error("the graphics card has no memory left: {why}")]
    NoGraphicsMemory {
        /// What the driver says.
        why: String,
    },
    /// The driver refused something that the window drew, which is a defect.
    #[error("drawing failed: {why}")]
    DrawingFailed {
        /// What the driver says.
        why: String,
    },
    /// The window opened, and its engine stopped with an error.
    #[error("the window ended with code {code}")]
    EndedBadly {
        /// The engine's exit code, never zero.
        code: u8,
    },
}

impl OpeningError {
    /// The cause and what to do about it, without a full stop.
    #[must_use]
    pub fn in_words(&self, words: &Words) -> String {
        match self {
            Self::NoDisplay { display: Some(name), .. } => {
                words.say("opening-no-display", &[("display", format!("{name:?}").into())])
            }
            Self::NoDisplay { display: None, .. } => words.say("opening-display-not-set", &[]),
            Self::NoLibrary { library, .. } => {
                words.say("opening-no-library", &[("library", (*library).into())])
            }
            Self::NoGraphics => words.say("opening-no-graphics", &[]),
            Self::GraphicsLost { why } => {
                words.say("opening-graphics-lost", &[("why", why.as_str().into())])
            }
            Self::NoGraphicsMemory { why } => {
                words.say("opening-no-graphics-memory", &[("why", why.as_str().into())])
            }
            Self::DrawingFailed { why } => {
                words.say("opening-drawing-failed", &[("why", why.as_str().into())])
            }
            Self::EndedBadly { code } => {
                words.say("opening-ended-badly", &[("code", (*code).into())])
            }
        }
    }
}

/// Checks that the display named by the environment answers and that its libraries are installed.
#[cfg(all(unix, not(target_os = "macos")))]
pub(super) fn check_display() -> Result<(), OpeningError> {
    use x11_dl::{xcursor::Xcursor, xinput2::XInput2, xlib::Xlib, xlib_xcb::Xlib_xcb};

    let named = std::env::var("DISPLAY").ok();
    // The connection is closed again at once: the engine makes its own.
    x11rb::connect(named.as_deref()).map_err(|source| OpeningError::NoDisplay {
        display: named.clone(),
        source: Box::new(source),
    })?;
    Xlib::open().map_err(|source| missing("libX11", source))?;
    Xcursor::open().map_err(|source| missing("libXcursor", source))?;
    Xlib_xcb::open().map_err(|source| missing("libX11-xcb", source))?;
    XInput2::open().map_err(|source| missing("libXi", source))?;
    Ok(())
}

/// Elsewhere a desktop program always has a display.
#[cfg(not(all(unix, not(target_os = "macos"))))]
pub(super) fn check_display() -> Result<(), OpeningError> {
    Ok(())
}

#[cfg(all(unix, not(target_os = "macos")))]
fn missing(library: &'static str, source: x11_dl::error::OpenError) -> OpeningError {
    OpeningError::NoLibrary { library, source: Box::new(source) }
}

/// Checks that at least one graphics driver answers, software drivers included.
pub(super) fn check_graphics() -> Result<(), OpeningError> {
    let instance = wgpu::Instance::new(wgpu::InstanceDescriptor::new_without_display_handle());
    let adapters = block_on(instance.enumerate_adapters(wgpu::Backends::all()));
    if adapters.is_empty() { Err(OpeningError::NoGraphics) } else { Ok(()) }
}

//! What becomes of the window when the graphics driver gives up while it is open.

use super::opening::OpeningError;
use bevy::prelude::*;
use bevy::render::error_handler::{ErrorType, RenderError, RenderErrorHandler, RenderErrorPolicy};
use std::sync::{Arc, Mutex, PoisonError};

/// Why drawing ended, for whoever started the window.
pub(super) type Given = Arc<Mutex<Option<OpeningError>>>;

#[derive(Resource)]
struct Lost(Given);

/// Ends the window when nothing can be drawn any more, and writes down why. Nothing is lost by that: every step is in
/// its file before it is shown.
pub(super) fn plugin(app: &mut App, given: Given) {
    app.insert_resource(Lost(given)).insert_resource(RenderErrorHandler(give_up));
}

/// Drawing on after such an error could flash, so it is never tried.
fn give_up(error: &RenderError, main: &mut World, _: &mut World) -> RenderErrorPolicy {
    let why = error.description.trim().to_owned();
    let said = match error.ty {
        ErrorType::DeviceLost => OpeningError::GraphicsLost { why },
        ErrorType::OutOfMemory => OpeningError::NoGraphicsMemory { why },
        ErrorType::Validation | ErrorType::Internal => OpeningError::DrawingFailed { why },
    };
    if let Some(lost) = main.get_resource::<Lost>() {
        // The first one is the cause of those that follow.
        lost.0.lock().unwrap_or_else(PoisonError::into_inner).get_or_insert(said);
    }
    main.write_message(AppExit::error());
    RenderErrorPolicy::StopRendering
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limit_an_error_of_the_driver_ends_the_window_once_and_the_first_is_told() {
        let given = Given::default();
        let mut app = App::new();
        plugin(&mut app, Arc::clone(&given));
        let mut render = World::new();
        let handler = app.world().resource::<RenderErrorHandler>().0;
        for ty in [ErrorType::DeviceLost, ErrorType::OutOfMemory, ErrorType::Internal] {
            let error = RenderError { ty, description: " gone \n".to_owned(), source: None };
            let policy = handler(&error, app.world_mut(), &mut render);
            assert!(matches!(policy, RenderErrorPolicy::StopRendering));
        }
        let told = given.lock().unwrap().take();
        assert!(matches!(told, Some(OpeningError::GraphicsLost { why }) if why == "gone"));
        let exits = app.world().resource::<Messages<AppExit>>();
        assert_eq!(exits.len(), 3);
    }
}

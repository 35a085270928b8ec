//! Work beside the window, so that no frame ever waits for it.

use crate::workshop::view::Busy;
use std::sync::mpsc::{self, Receiver, TryRecvError};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread;

/// Makes a resting window look again; called from any thread.
pub type Wake = Arc<dyn Fn() + Send + Sync>;

/// Work that goes on in a thread of its own. Dropping it lets the thread run on, unheard.
pub struct Work<T> {
    stage: Arc<Stage>,
    /// Behind a lock only so that the engine may keep it.
    answer: Mutex<Receiver<T>>,
}

/// How far work has come.
pub struct Stage {
    busy: Mutex<Busy>,
    wake: Wake,
}

/// What has become of work.
pub enum Became<T> {
    /// It goes on.
    Pending,
    /// It is done.
    Done(T),
    /// It broke off, which is a defect of the program.
    Lost,
}

impl<T: Send + 'static> Work<T> {
    /// Begins work, which is called by `text` until it says something else.
    pub fn begin(
        wake: &Wake,
        text: String,
        work: impl FnOnce(&Stage) -> T + Send + 'static,
    ) -> Self {
        let busy = Mutex::new(Busy { text, share: None });
        let stage = Arc::new(Stage { busy, wake: Arc::clone(wake) });
        let (sender, answer) = mpsc::channel();
        let told = Arc::clone(&stage);
        thread::spawn(move || {
            // Dropped last, whatever happens: the window finds the answer, or that there is none.
            let _wakes = WakesAtEnd(Arc::clone(&told.wake));
            let sender = sender;
            // Nobody listens any more when the page was left.
            let _ = sender.send(work(&told));
        });
        Self { stage, answer: Mutex::new(answer) }
    }

    /// What has become of it.
    pub fn look(&self) -> Became<T> {
        match self.answer.lock().unwrap_or_else(PoisonError::into_inner).try_recv() {
            Ok(answer) => Became::Done(answer),
            Err(TryRecvError::Empty) => Became::Pending,
            Err(TryRecvError::Disconnected) => Became::Lost,
        }
    }

    /// How far it has come.
    pub fn busy(&self) -> Busy {
        self.stage.busy.lock().unwrap_or_else(PoisonError::into_inner).clone()
    }
}

impl Stage {
    /// Says what is being done, and how much of how much is done.
    pub fn tell(&self, text: String, done: usize, of: usize) {
        let share = (of > 0).then(|| done as f32 / of as f32);
        *self.busy.lock().unwrap_or_else(PoisonError::into_inner) = Busy { text, share };
        (self.wake)();
    }
}

struct WakesAtEnd(Wake);

impl Drop for WakesAtEnd {
    fn drop(&mut self) {
        (self.0)();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::atomic::{AtomicUsize, Ordering};
    use std::time::Duration;

    fn wait<T: Send + 'static>(work: &Work<T>) -> Option<T> {
        loop {
            match work.look() {
                Became::Pending => thread::sleep(Duration::from_millis(1)),
                Became::Done(answer) => return Some(answer),
                Became::Lost => return None,
            }
        }
    }

    #[test]
    fn work_is_heard_of_and_wakes_the_window() {
        let woken = Arc::new(AtomicUsize::new(0));
        let counted = Arc::clone(&woken);
        let wake: Wake = Arc::new(move || {
            counted.fetch_add(1, Ordering::SeqCst);
        });
        let work = Work::begin(&wake, "begins".to_owned(), |stage| {
            stage.tell("halfway".to_owned(), 1, 2);
            7
        });
        assert_eq!(wait(&work), Some(7));
        assert_eq!(work.busy(), Busy { text: "halfway".to_owned(), share: Some(0.5) });
        while woken.load(Ordering::SeqCst) < 2 {
            thread::sleep(Duration::from_millis(1));
        }
    }

    #[test]
    fn work_that_breaks_off_is_noticed() {
        let wake: Wake = Arc::new(|| {});
        let work: Work<()> = Work::begin(&wake, String::new(), |_| panic!("as the test wants it"));
        assert_eq!(wait(&work), None);
    }
}

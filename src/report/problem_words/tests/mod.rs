//! Problems of every kind are said in whole sentences, and the caret stands where it should.

mod carets;
mod samples;
mod texts;

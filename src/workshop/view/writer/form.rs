//! What a form is made of.

/// A row of a form.
#[derive(Debug, Clone, PartialEq)]
pub enum Row {
    /// A heading.
    Heading(String),
    /// A sentence.
    Remark(String),
    /// A field.
    Field(Field),
    /// One of several.
    Choice(Choice),
    /// Fields that stand beside each other where there is room.
    Beside(Vec<Row>),
    /// Buttons, each with what it does.
    Deeds(Vec<(String, Deed)>),
}

/// A field for one value of the text.
#[derive(Debug, Clone, PartialEq)]
pub struct Field {
    /// Path of the value.
    pub path: String,
    /// What it is called, which nothing else in the form is.
    pub name: String,
    /// What stands beside it; a part of the name where the heading above says the rest.
    pub label: String,
    /// What it holds.
    pub text: String,
    /// What can be typed.
    pub sort: Sort,
    /// Why that is none.
    pub problem: Option<String>,
}

/// What a field can hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sort {
    /// A text on one line.
    Line,
    /// A text on several lines.
    Lines,
    /// A number.
    Number,
    /// A whole number, 0 or more.
    Whole,
    /// An amount of money.
    Money,
}

/// One of several that the text can say.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// Path of the value.
    pub path: String,
    /// What it is called, which nothing else in the form is.
    pub name: String,
    /// What stands beside it.
    pub label: String,
    /// What is chosen, in words; it need be none of the options.
    pub chosen: String,
    /// As the text says it, and in words.
    pub options: Vec<(String, String)>,
}

/// A change of the text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Deed {
    /// Let the value at a path be this.
    Set {
        /// Path of the value.
        path: String,
        /// What is written there.
        value: String,
    },
    /// Put an item to the end of a list.
    Push {
        /// Path of the list.
        list: String,
        /// What is written there.
        item: String,
    },
    /// Take the value at a path away.
    Remove {
        /// Its path.
        path: String,
    },
}

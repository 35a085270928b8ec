//! Stored tables of other programs, read by column name.

/// One line of a table.
pub struct Row<'a> {
    names: Vec<&'a str>,
    fields: Vec<&'a str>,
}

pub fn rows(table: &str) -> impl Iterator<Item = Row<'_>> {
    let mut lines = table.lines();
    let names: Vec<&str> = lines.next().expect("a header").split(',').collect();
    lines.map(move |line| {
        let fields: Vec<&str> = line.split(',').collect();
        assert_eq!(fields.len(), names.len(), "{line}");
        Row { names: names.clone(), fields }
    })
}

impl Row<'_> {
    /// The number in a column, none where the cell is empty.
    pub fn number(&self, name: &str) -> Option<f64> {
        let place = self.names.iter().position(|known| *known == name).expect(name);
        let text = self.fields[place];
        if text.is_empty() { None } else { Some(text.parse().expect(text)) }
    }

    pub fn value(&self, name: &str) -> f64 {
        self.number(name).expect(name)
    }
}

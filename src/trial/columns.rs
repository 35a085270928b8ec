//! Rows as a Parquet file: the columns of the CSV, typed.
//!
//! Format and compression are those of the open standard; no compression, one group of rows, so that
//! the same rows give the same bytes.

use super::row::{Judged, Row, Rows};
use crate::assessment::rubric::MarkCategory;
use parquet::basic::{LogicalType, Repetition, Type as Physical};
use parquet::data_type::{
    BoolType, ByteArray, ByteArrayType, DataType, DoubleType, Int32Type, Int64Type,
};
use parquet::errors::ParquetError;
use parquet::file::properties::WriterProperties;
use parquet::file::writer::{SerializedFileWriter, SerializedRowGroupWriter};
use parquet::schema::types::{Type, TypePtr};
use std::io::Write;
use std::sync::Arc;

/// A column: its name, and the values of every row.
enum Column {
    Text(&'static str, Vec<String>),
    Whole(&'static str, Vec<i32>),
    /// A seed: 64 bits without a sign.
    Seed(&'static str, Vec<u64>),
    Number(&'static str, Vec<f64>),
    IfMarkedNumber(&'static str, Vec<Option<f64>>),
    IfMarkedWhether(&'static str, Vec<Option<bool>>),
}

fn columns(rows: &Rows) -> Vec<Column> {
    let own = &rows.rows;
    let same = |text: &str| own.iter().map(|_| text.to_owned()).collect();
    let texts = |of: &dyn Fn(&Row) -> String| own.iter().map(of).collect();
    let whole = |of: fn(&Row) -> u32| {
        own.iter().map(|row| i32::try_from(of(row)).unwrap_or(i32::MAX)).collect()
    };
    let numbers = |of: fn(&Row) -> f64| own.iter().map(of).collect();
    let marks = |of: &dyn Fn(&Judged) -> Option<f64>| {
        own.iter().map(|row| row.judged.as_ref().and_then(of)).collect()
    };
    let whether =
        |of: fn(&Judged) -> bool| own.iter().map(|row| row.judged.as_ref().map(of)).collect();
    let mut columns = vec![
        Column::Text("scenario", same(&rows.of.scenario)),
        Column::Text("fingerprint", same(&rows.of.fingerprint)),
        Column::Text("currency", same(&rows.of.currency)),
        Column::Text("program", same(&rows.of.program)),
        Column::Seed("seed", own.iter().map(|row| row.seed).collect()),
        Column::Text("policy", texts(&|row| row.policy.word().to_owned())),
        Column::Text("fault", texts(&|row| row.fault.clone())),
        Column::Text("outcome", texts(&|row| row.outcome.word().to_owned())),
        Column::Whole("steps", whole(|row| row.steps)),
        Column::Whole("repairs", whole(|row| row.repairs)),
        Column::Whole("minutes", whole(|row| row.minutes)),
        Column::Number("things", numbers(|row| row.things.as_units())),
        Column::Number("spent", numbers(|row| row.spent.as_units())),
        Column::Number("comeback", numbers(|row| row.comeback.as_units())),
        Column::Number("cost", numbers(Row::cost)),
        Column::IfMarkedNumber("marks", marks(&|judged| Some(judged.total))),
        Column::IfMarkedWhether("passed", whether(|judged| judged.passed)),
    ];
    for (place, category) in MarkCategory::ALL.into_iter().enumerate() {
        columns.push(Column::IfMarkedNumber(
            category.word(),
            marks(&|judged| judged.shares.get(place).copied()),
        ));
    }
    columns.extend([
        Column::IfMarkedWhether("proved", whether(|judged| judged.proved)),
        Column::IfMarkedWhether("unproved", whether(|judged| judged.unproved)),
        Column::IfMarkedNumber("regret_least", marks(&|judged| Some(judged.regret?.lower))),
        Column::IfMarkedNumber("regret_most", marks(&|judged| Some(judged.regret?.upper))),
        Column::IfMarkedNumber("value_least", marks(&|judged| Some(judged.value?.lower))),
        Column::IfMarkedNumber("value_most", marks(&|judged| Some(judged.value?.upper))),
    ]);
    columns
}

impl Column {
    fn field(&self) -> Result<TypePtr, ParquetError> {
        let (name, physical, logical) = match self {
            Self::Text(name, _) => (name, Physical::BYTE_ARRAY, Some(LogicalType::String)),
            Self::Whole(name, _) => (name, Physical::INT32, None),
            Self::Seed(name, _) => {
                let unsigned = LogicalType::integer(64, false);
                (name, Physical::INT64, Some(unsigned))
            }
            Self::Number(name, _) | Self::IfMarkedNumber(name, _) => (name, Physical::DOUBLE, None),
            Self::IfMarkedWhether(name, _) => (name, Physical::BOOLEAN, None),
        };
        let may_lack = matches!(self, Self::IfMarkedNumber(..) | Self::IfMarkedWhether(..));
        let repetition = if may_lack { Repetition::OPTIONAL } else { Repetition::REQUIRED };
        let field = Type::primitive_type_builder(name, physical)
            .with_logical_type(logical)
            .with_repetition(repetition)
            .build()?;
        Ok(Arc::new(field))
    }

    fn write<W: Write + Send>(
        &self,
        group: &mut SerializedRowGroupWriter<'_, W>,
    ) -> Result<(), ParquetError> {
        match self {
            Self::Text(_, texts) => {
                let texts: Vec<ByteArray> =
                    texts.iter().map(|text| ByteArray::from(text.as_str())).collect();
                put::<ByteArrayType, W>(group, &texts, None)
            }
            Self::Whole(_, values) => put::<Int32Type, W>(group, values, None),
            Self::Seed(_, values) => {
                let bits: Vec<i64> = values.iter().map(|value| value.cast_signed()).collect();
                put::<Int64Type, W>(group, &bits, None)
            }
            Self::Number(_, values) => put::<DoubleType, W>(group, values, None),
            Self::IfMarkedNumber(_, values) => {
                let there: Vec<f64> = values.iter().flatten().copied().collect();
                put::<DoubleType, W>(group, &there, Some(&levels(values)))
            }
            Self::IfMarkedWhether(_, values) => {
                let there: Vec<bool> = values.iter().flatten().copied().collect();
                put::<BoolType, W>(group, &there, Some(&levels(values)))
            }
        }
    }
}

/// One where a value is there, zero where it lacks.
fn levels<T>(values: &[Option<T>]) -> Vec<i16> {
    values.iter().map(|value| i16::from(value.is_some())).collect()
}

fn put<T: DataType, W: Write + Send>(
    group: &mut SerializedRowGroupWriter<'_, W>,
    values: &[T::T],
    levels: Option<&[i16]>,
) -> Result<(), ParquetError> {
    if let Some(mut column) = group.next_column()? {
        column.typed::<T>().write_batch(values, levels, None)?;
        column.close()?;
    }
    Ok(())
}

/// Writes rows as Parquet.
///
/// # Errors
/// [`ParquetError`] when the writer has no more room.
pub fn write<W: Write + Send>(rows: &Rows, into: W) -> Result<(), ParquetError> {
    let columns = columns(rows);
    let fields: Result<Vec<TypePtr>, ParquetError> = columns.iter().map(Column::field).collect();
    let schema = Type::group_type_builder("trial").with_fields(fields?).build()?;
    let properties = WriterProperties::builder().set_created_by("faultwright".to_owned()).build();
    let mut writer = SerializedFileWriter::new(into, Arc::new(schema), Arc::new(properties))?;
    let mut group = writer.next_row_group()?;
    for column in &columns {
        column.write(&mut group)?;
    }
    group.close()?;
    writer.close()?;
    Ok(())
}

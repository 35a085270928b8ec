//! The vehicle on the road: what is seen from within, drawn as it goes, and the way to break it off.

use super::Tools;
use super::pieces::{heading_ui, pick_ui};
use crate::wording::amounts;
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::road::{ChartView, RoadAction, RoadPace, RoadView};
use egui::{
    Align2, Key, Label, Painter, Pos2, ProgressBar, Rect, RichText, ScrollArea, Sense, Shape,
    Stroke, TextStyle, Ui, WidgetInfo, WidgetType, pos2, vec2,
};

/// Least height of a chart [points].
const LEAST_CHART: f32 = 72.0;
/// Width from which two charts stand side by side [points].
const TWO_ABREAST_FROM: f32 = 520.0;
/// Room to the left of a chart, for its scale [points].
const LEFT: f32 = 48.0;
/// Width of a line [points].
const LINE: f32 = 2.0;
/// Dash and gap of what is wanted [points]; what is actual is drawn whole.
const DASH: [f32; 2] = [7.0, 4.0];

/// The drive in the place of the bay.
pub fn road_ui(ui: &mut Ui, road: &RoadView, tools: Tools<'_>, actions: &mut Vec<Action>) {
    let mut want = |wanted| actions.push(Action::Road(wanted));
    if ui.input(|input| input.key_pressed(Key::Escape)) {
        want(RoadAction::PullIn);
    }
    heading_ui(ui, &tools.words.say("road-heading", &[("road", road.road.as_str().into())]));
    let clock = [("at", clock(road.at).into()), ("of", clock(road.of).into())];
    let clock = tools.words.say("road-clock", &clock);
    ui.add(ProgressBar::new((road.at / road.of.max(1.0)).clamp(0.0, 1.0)).text(&clock));
    ui.horizontal_wrapped(|ui| {
        if ui.button(tools.say("road-pull-in")).clicked() {
            want(RoadAction::PullIn);
        }
        if ui.button(tools.say("road-to-the-end")).clicked() {
            want(RoadAction::ToTheEnd);
        }
        ui.separator();
        for (pace, key) in
            RoadPace::ALL.into_iter().zip(["road-pace-slow", "road-pace-usual", "road-pace-fast"])
        {
            if pick_ui(ui, road.pace == pace, &tools.say(key)).clicked() {
                want(RoadAction::SetPace(pace));
            }
        }
    });
    if road.lacks_reader {
        ui.add(Label::new(RichText::new(tools.say("road-no-reader")).small()).wrap());
    }
    ScrollArea::vertical().auto_shrink(false).show(ui, |ui| {
        let line = ui.text_style_height(&TextStyle::Body) + 2.0 * ui.spacing().item_spacing.y;
        let abreast = if ui.available_width() >= TWO_ABREAST_FROM { 2 } else { 1 };
        let rows = road.charts.len().div_ceil(abreast).max(1) as f32;
        let height = (ui.available_height() / rows - 2.0 * line - theme::GAP).max(LEAST_CHART);
        for charts in road.charts.chunks(abreast) {
            ui.columns(abreast, |columns| {
                for (ui, chart) in columns.iter_mut().zip(charts) {
                    // A column of its own would spread the words of a line over its width.
                    ui.vertical(|ui| chart_ui(ui, road, chart, height, tools));
                }
            });
        }
    });
}

/// A chart under a line that says its newest figures.
fn chart_ui(ui: &mut Ui, road: &RoadView, chart: &ChartView, height: f32, tools: Tools<'_>) {
    let says = newest(road, chart, tools);
    ui.add(Label::new(&says).wrap());
    let (rect, response) =
        ui.allocate_exact_size(vec2(ui.available_width(), height), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Image, ui.is_enabled(), &says));
    let field = Rect::from_min_max(rect.min + vec2(LEFT, 4.0), rect.max - vec2(4.0, 4.0));
    let palette = theme::palette(ui);
    let painter = ui.painter();
    painter.rect_filled(field, 0.0, palette.field);
    let font = TextStyle::Small.resolve(ui.style());
    for value in chart.scale {
        let at = place(field, road, chart, [0.0, value]);
        painter.hline(field.x_range(), at.y, Stroke::new(1.0, palette.rule));
        let text = format!("{value:.0}");
        let align = if value > chart.scale[0] { Align2::RIGHT_TOP } else { Align2::RIGHT_BOTTOM };
        painter.text(pos2(field.left() - 6.0, at.y), align, text, font.clone(), palette.ink);
    }
    let count = chart.lines.len();
    for (number, line) in chart.lines.iter().enumerate() {
        let points: Vec<Pos2> = road
            .times
            .iter()
            .zip(&line.values)
            .take(road.seen)
            .map(|(time, value)| place(field, road, chart, [*time, *value]))
            .collect();
        let stroke = Stroke::new(LINE, palette.series[number % palette.series.len()]);
        draw(painter, points, stroke, count > 1 && number == 0);
    }
    let now = place(field, road, chart, [road.at, 0.0]).x;
    painter.vline(now, field.y_range(), Stroke::new(1.0, palette.accent));
    ui.add_space(theme::GAP);
}

/// Where a value stands at a time.
fn place(field: Rect, road: &RoadView, chart: &ChartView, [time, value]: [f32; 2]) -> Pos2 {
    let [least, most] = chart.scale;
    pos2(
        field.left() + field.width() * (time / road.of.max(1.0)).clamp(0.0, 1.0),
        field.bottom() - field.height() * ((value - least) / (most - least)).clamp(0.0, 1.0),
    )
}

fn draw(painter: &Painter, points: Vec<Pos2>, stroke: Stroke, is_dashed: bool) {
    if is_dashed {
        painter.extend(Shape::dashed_line(&points, stroke, DASH[0], DASH[1]));
    } else {
        painter.add(Shape::line(points, stroke));
    }
}

/// The name of a chart with the newest figure of each line.
fn newest(road: &RoadView, chart: &ChartView, tools: Tools<'_>) -> String {
    let figures: Vec<String> = chart
        .lines
        .iter()
        .map(|line| {
            let figure = road.seen.checked_sub(1).and_then(|index| line.values.get(index));
            let figure = figure.map_or_else(
                || tools.say("road-no-figure"),
                |value| {
                    amounts::number(f64::from(*value), chart.decimals, tools.words) + &chart.unit
                },
            );
            if line.name.is_empty() { figure } else { format!("{} {figure}", line.name) }
        })
        .collect();
    format!("{}: {}", chart.name, figures.join(", "))
}

/// Minutes and seconds.
fn clock(seconds: f32) -> String {
    let whole = seconds.max(0.0).floor();
    format!("{:.0}:{:02.0}", (whole / 60.0).floor(), whole % 60.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn closed_form_the_clock_shows_minutes_and_seconds() {
        assert_eq!(clock(0.0), "0:00");
        assert_eq!(clock(59.9), "0:59");
        assert_eq!(clock(61.2), "1:01");
        assert_eq!(clock(600.0), "10:00");
    }
}

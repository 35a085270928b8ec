//! How belief moved, drawn: a line a suspect, a column a step. Lines differ in dash and mark as well as in colour.

use super::super::Tools;
use crate::workshop::theme;
use crate::workshop::view::action::Action;
use crate::workshop::view::debrief::{DebriefAction, LookBackView};
use egui::{
    Align2, Color32, EventFilter, Key, Painter, Pos2, Rect, Response, RichText, Sense, Shape,
    Stroke, TextStyle, Ui, WidgetInfo, WidgetType, pos2, vec2,
};

/// Dash and gap of each line in turn [points]; the first is whole.
const DASHES: [Option<[f32; 2]>; 5] =
    [None, Some([9.0, 4.0]), Some([3.0, 3.0]), Some([14.0, 5.0]), Some([1.5, 5.0])];
/// Room to the left of the field, for chances, and under it, for numbers of steps [points].
const LEFT: f32 = 44.0;
const UNDER: f32 = 20.0;
/// Half the size of a mark [points].
const MARK: f32 = 3.5;
/// Least room between two numbers under the field [points].
const BETWEEN_NUMBERS: f32 = 28.0;

/// The plot with its key; a click, or an arrow key while it has the focus, goes to a step.
pub fn course_ui(
    ui: &mut Ui,
    look_back: &LookBackView,
    height: f32,
    tools: Tools<'_>,
    actions: &mut Vec<Action>,
) {
    let points = look_back.log.len() + 1;
    ui.label(RichText::new(tools.say("report-course-how")).small());
    let (rect, response) =
        ui.allocate_exact_size(vec2(ui.available_width(), height), Sense::click());
    let field =
        Rect::from_min_max(rect.min + vec2(LEFT, MARK + 2.0), rect.max - vec2(MARK + 2.0, UNDER));
    let plot = Plot { field, points };
    let spoken = spoken(look_back, look_back.at + 1, tools);
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Image, ui.is_enabled(), &spoken));
    draw(ui, look_back, &plot, tools);
    if response.has_focus() {
        let stroke = Stroke::new(2.0, theme::palette(ui).accent);
        ui.painter().rect_stroke(rect, 0.0, stroke, egui::StrokeKind::Inside);
    }
    keys(ui, &response, look_back, actions);
    let pointed = response.hover_pos().map(|at| plot.nearest(at.x));
    if response.clicked() {
        response.request_focus();
        if let Some(point) = pointed {
            let at = point.saturating_sub(1);
            actions.push(Action::Debrief(DebriefAction::GoTo(at)));
        }
    }
    if let Some(point) = pointed {
        response.on_hover_text_at_pointer(self::spoken(look_back, point, tools));
    }
    key_ui(ui, look_back);
}

/// Where things are in the field.
struct Plot {
    field: Rect,
    points: usize,
}

impl Plot {
    fn x(&self, point: usize) -> f32 {
        let share = point as f32 / (self.points - 1).max(1) as f32;
        self.field.left() + self.field.width() * share
    }

    fn at(&self, point: usize, chance: f32) -> Pos2 {
        pos2(self.x(point), self.field.bottom() - self.field.height() * chance.clamp(0.0, 1.0))
    }

    #[expect(
        clippy::cast_sign_loss,
        clippy::cast_possible_truncation,
        reason = "it was just brought into range"
    )]
    fn nearest(&self, x: f32) -> usize {
        let share = ((x - self.field.left()) / self.field.width().max(1.0)).clamp(0.0, 1.0);
        (share * (self.points - 1) as f32).round() as usize
    }
}

fn draw(ui: &Ui, look_back: &LookBackView, plot: &Plot, tools: Tools<'_>) {
    let palette = theme::palette(ui);
    let painter = ui.painter();
    let font = TextStyle::Small.resolve(ui.style());
    let field = plot.field;
    painter.rect_filled(field, 0.0, palette.field);
    for quarter in 0..=4_u8 {
        let chance = f32::from(quarter) / 4.0;
        let y = plot.at(0, chance).y;
        painter.hline(field.x_range(), y, Stroke::new(1.0, palette.rule));
        let percent = [("chance", (100.0 * chance).round().to_string().into())];
        let text = tools.words.say("course-percent", &percent);
        let place = pos2(field.left() - 6.0, y);
        painter.text(place, Align2::RIGHT_CENTER, text, font.clone(), palette.ink);
    }
    let mut next_free = field.left();
    for point in 1..plot.points {
        let x = plot.x(point);
        if x >= next_free {
            let place = pos2(x, field.bottom() + 4.0);
            painter.text(place, Align2::CENTER_TOP, point.to_string(), font.clone(), palette.ink);
            next_free = x + BETWEEN_NUMBERS;
        }
        let is_dearer =
            look_back.regrets.get(point - 1).is_some_and(|it| it.least > 0.0 && !it.is_open);
        if is_dearer {
            let top = pos2(x, field.bottom() - 9.0);
            let corners = vec![top, top + vec2(5.0, 9.0), top + vec2(-5.0, 9.0)];
            painter.add(Shape::convex_polygon(corners, palette.breach, Stroke::NONE));
        }
    }
    let x = plot.x(look_back.at + 1);
    painter.vline(x, field.y_range(), Stroke::new(2.0, palette.accent));
    for (place, (_, chances)) in look_back.course.rows.iter().enumerate() {
        let line: Vec<Pos2> =
            chances.iter().enumerate().map(|(point, chance)| plot.at(point, *chance)).collect();
        stroke(painter, place, &line, palette.series[place % palette.series.len()]);
        for at in line {
            mark(painter, place, at, palette.series[place % palette.series.len()]);
        }
    }
}

fn stroke(painter: &Painter, place: usize, line: &[Pos2], color: Color32) {
    let stroke = Stroke::new(2.0, color);
    match DASHES[place % DASHES.len()] {
        None => {
            painter.add(Shape::line(line.to_vec(), stroke));
        }
        Some([dash, gap]) => {
            painter.extend(Shape::dashed_line(line, stroke, dash, gap));
        }
    }
}

/// A mark of another shape for each line: disc, square, triangle, diamond, cross.
fn mark(painter: &Painter, place: usize, at: Pos2, color: Color32) {
    let polygon = |corners: &[[f32; 2]]| {
        let corners = corners.iter().map(|[x, y]| at + vec2(*x, *y) * MARK).collect();
        painter.add(Shape::convex_polygon(corners, color, Stroke::NONE));
    };
    match place % DASHES.len() {
        0 => {
            painter.circle_filled(at, MARK, color);
        }
        1 => polygon(&[[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]]),
        2 => polygon(&[[0.0, -1.2], [1.2, 1.0], [-1.2, 1.0]]),
        3 => polygon(&[[0.0, -1.4], [1.4, 0.0], [0.0, 1.4], [-1.4, 0.0]]),
        _ => {
            for [x, y] in [[1.0, 1.0], [1.0, -1.0]] {
                let arm = vec2(x, y) * MARK;
                painter.line_segment([at - arm, at + arm], Stroke::new(2.0, color));
            }
        }
    }
}

/// Which line is which.
fn key_ui(ui: &mut Ui, look_back: &LookBackView) {
    for (place, (name, chances)) in look_back.course.rows.iter().enumerate() {
        ui.horizontal(|ui| {
            let (rect, _) = ui.allocate_exact_size(
                vec2(46.0, ui.text_style_height(&TextStyle::Body)),
                Sense::hover(),
            );
            let palette = theme::palette(ui);
            let color = palette.series[place % palette.series.len()];
            let middle = rect.center().y;
            let line = [pos2(rect.left(), middle), pos2(rect.right(), middle)];
            stroke(ui.painter(), place, &line, color);
            mark(ui.painter(), place, rect.center(), color);
            let now = chances.get(look_back.at + 1).copied().unwrap_or(0.0);
            ui.add(egui::Label::new(format!("{name}: {:.0} %", 100.0 * now)).wrap());
        });
    }
}

/// What was believed at a point, in words.
fn spoken(look_back: &LookBackView, point: usize, tools: Tools<'_>) -> String {
    let head = if point == 0 {
        tools.say("window-course-before")
    } else {
        let step = look_back.log.get(point - 1).map_or("", |step| step.step.as_str());
        tools.words.say("window-course-after", &[("number", point.into()), ("step", step.into())])
    };
    let mut lines = vec![head];
    for (name, chances) in &look_back.course.rows {
        let chance = 100.0 * chances.get(point).copied().unwrap_or(0.0);
        lines.push(format!("{name}: {chance:.0} %"));
    }
    lines.join("\n")
}

/// Arrow keys, Home and End while the plot has the focus.
fn keys(ui: &Ui, response: &Response, look_back: &LookBackView, actions: &mut Vec<Action>) {
    if !response.has_focus() {
        return;
    }
    let filter = EventFilter { horizontal_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    let last = look_back.log.len().saturating_sub(1);
    let keys = [
        (Key::ArrowLeft, look_back.at.saturating_sub(1)),
        (Key::ArrowRight, look_back.at + 1),
        (Key::Home, 0),
        (Key::End, last),
    ];
    for (key, at) in keys {
        if ui.input(|input| input.key_pressed(key)) {
            actions.push(Action::Debrief(DebriefAction::GoTo(at)));
        }
    }
}

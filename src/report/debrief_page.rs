//! A debrief as one page of HTML that needs no other file: to be read, printed and kept.

use super::chart;
use super::markup::escaped;
use crate::assessment::debrief::Debrief;
use crate::assessment::rubric::Rubric;
use crate::session::attempt::Session;
use crate::wording::catalogue::Words;
use crate::wording::debrief_words::{DebriefWords, MarkWords, in_parts};
use crate::wording::lesson_words::LessonWords;
use crate::wording::reviewed_step_words::StepWords;
use core::fmt::Write as _;

/// How the page looks.
const STYLE: &str = include_str!("debrief_page.css");

/// The whole page.
#[must_use]
pub fn page(debrief: &Debrief, session: &Session, rubric: &Rubric, words: &Words) -> String {
    let parts = in_parts(debrief, session, rubric, words);
    let job = &session.briefing().job;
    let title = words.say("report-title", &[("title", job.title.as_str().into())]);
    let mut html = format!(
        "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <title>{}</title>\n<style>\n{STYLE}</style>\n</head>\n<body>\n<main>\n",
        words.language(),
        escaped(&title)
    );
    let _ = writeln!(html, "<h1>{}</h1>", escaped(&title));
    paragraph(&mut html, "soft", &job.concern);
    for line in &parts.outcome {
        paragraph(&mut html, "", line);
    }
    paragraph(&mut html, "total", &parts.total);
    for critical in &parts.critical {
        paragraph(&mut html, "critical", critical);
    }
    for hint in &parts.hints {
        paragraph(&mut html, "soft", hint);
    }
    lessons(&mut html, &parts.lessons, words);
    heading(&mut html, "report-marks", words);
    for mark in &parts.marks {
        mark_part(&mut html, mark);
    }
    drawings(&mut html, debrief, session, words);
    table(&mut html, &parts, words);
    let program = words.say("report-program", &[("version", env!("CARGO_PKG_VERSION").into())]);
    let _ = writeln!(
        html,
        "</main>\n<footer>\n<p>{}</p>\n<p>{}</p>\n</footer>\n</body>\n</html>",
        escaped(&words.say("cli-safety", &[])),
        escaped(&program)
    );
    html
}

fn paragraph(html: &mut String, class: &str, text: &str) {
    let class = if class.is_empty() { String::new() } else { format!(" class=\"{class}\"") };
    let _ = writeln!(html, "<p{class}>{}</p>", escaped(text));
}

fn heading(html: &mut String, key: &str, words: &Words) {
    let _ = writeln!(html, "<h2>{}</h2>", escaped(&words.say(key, &[])));
}

fn lessons(html: &mut String, lessons: &[LessonWords], words: &Words) {
    if lessons.is_empty() {
        paragraph(html, "", &words.say("debrief-no-lessons", &[]));
        return;
    }
    heading(html, "debrief-lessons", words);
    html.push_str("<ol class=\"lessons\">\n");
    for lesson in lessons {
        let advice = words.say("lesson-next", &[("advice", lesson.next_time.as_str().into())]);
        let _ = writeln!(
            html,
            "<li><strong>{}</strong> <span class=\"soft\">({})</span><br>{}</li>",
            escaped(&lesson.title),
            escaped(&lesson.cost),
            escaped(advice.trim())
        );
    }
    html.push_str("</ol>\n");
}

fn mark_part(html: &mut String, mark: &MarkWords) {
    let _ = writeln!(
        html,
        "<div class=\"mark\"><span>{}</span><span class=\"bar\"><span style=\"width:{:.1}%\"></span>\
         </span><span>{} / {}</span></div>\n<ul class=\"remarks\">",
        escaped(&mark.category),
        100.0 * mark.share,
        escaped(&mark.points),
        escaped(&mark.most)
    );
    for remark in &mark.remarks {
        let _ = writeln!(
            html,
            "<li class=\"{}\"><span class=\"sign\">{}</span>{}</li>",
            if remark.good { "good" } else { "bad" },
            escaped(&remark.sign),
            escaped(&remark.text)
        );
    }
    html.push_str("</ul>\n");
}

fn drawings(html: &mut String, debrief: &Debrief, session: &Session, words: &Words) {
    let course = debrief.course();
    heading(html, "report-course", words);
    paragraph(html, "soft", &words.say("report-course-how", &[]));
    if course.is_dearer.contains(&true) {
        paragraph(html, "soft", &words.say("report-dearer", &[]));
    }
    html.push_str(&chart::course(&course, words));
    html.push('\n');
    let currency = &session.briefing().prices.currency;
    let regrets = chart::regrets(&debrief.review.steps, currency, words);
    if !regrets.is_empty() {
        heading(html, "report-regrets", words);
        paragraph(html, "soft", &words.say("report-regrets-how", &[]));
        html.push_str(&regrets);
        html.push('\n');
    }
}

fn table(html: &mut String, parts: &DebriefWords, words: &Words) {
    heading(html, "window-steps-heading", words);
    html.push_str("<div class=\"scroll\"><table>\n<thead><tr>");
    for (key, class) in [
        ("report-head-number", " class=\"number\""),
        ("report-head-step", ""),
        ("report-head-cost", " class=\"number\""),
        ("report-head-compared", ""),
        ("report-head-best", ""),
        ("report-head-known", ""),
    ] {
        let _ = write!(html, "<th{class} scope=\"col\">{}</th>", escaped(&words.say(key, &[])));
    }
    html.push_str("</tr></thead>\n<tbody>\n");
    for step in &parts.steps {
        row(html, step, words);
    }
    html.push_str("</tbody>\n</table></div>\n");
}

fn row(html: &mut String, step: &StepWords, words: &Words) {
    let best = [&step.best, &step.told].into_iter().filter(|it| !it.is_empty());
    let best: Vec<String> = best.map(|it| escaped(it)).collect();
    let known = if step.moved {
        words.say(
            "report-moved",
            &[("before", step.before.as_str().into()), ("after", step.belief.as_str().into())],
        )
    } else {
        String::new()
    };
    let _ = writeln!(
        html,
        "<tr><td class=\"number\">{}</td><td><code>{}</code></td><td class=\"number\">{}</td>\
         <td>{}</td><td>{}</td><td>{}</td></tr>",
        step.number,
        escaped(&step.step),
        escaped(&step.cost),
        escaped(&step.regret),
        best.join("<br>"),
        escaped(&known)
    );
}

//! Answers and advice about a piece's care.

use conservation::advice::{Advice, Advised};
use conservation::caution::Caution;
use measure::Unit;
use serde_json::{Map, Value, json};
use sizing::Sizes;

use crate::care::{Amount, Answer, Cure, Question, authority, cures};

use super::length;

/// An answer: every row under its key, with the paths that explain it, then its cautions.
pub fn answer(answer: &Answer, unit: Unit) -> Value {
    let rows = answer.groups.iter().flat_map(|group| &group.rows);
    let rows: Map<String, Value> = rows
        .map(|row| {
            let paths: Vec<String> = row
                .lines
                .iter()
                .map(|line| answer.working.line(*line).subject.to_string())
                .collect();
            let mut value = amount(&row.amount, unit);
            value["label"] = row.label.clone().into();
            value["trust"] = row.trust.clone().into();
            value["paths"] = paths.into();
            (row.key.clone(), value)
        })
        .collect();
    json!({ "answer": rows, "cautions": cautions(&answer.cautions) })
}

fn amount(amount: &Amount, unit: Unit) -> Value {
    let text = amount.text(unit);
    let figure =
        |figure: &working::Figure| json!({ "value": figure.value(), "unit": figure.unit() });
    let mut value = match amount {
        Amount::Length(plain) | Amount::About(plain) => length(*plain, unit),
        Amount::Between(low, high) => {
            json!({ "low": length(*low, unit), "high": length(*high, unit) })
        }
        Amount::Mass(mass) => json!({ "nanograms": mass.nanograms() }),
        Amount::Angle(angle) => json!({ "millionths": angle.millionths() }),
        Amount::Figure(plain) => figure(plain),
        Amount::Span(low, high) => json!({ "low": figure(low), "high": figure(high) }),
        Amount::Yes(yes) => json!({ "yes": yes }),
        Amount::Count(count) => json!({ "count": count }),
        Amount::Words(_) => json!({}),
    };
    value["text"] = text.into();
    value
}

/// Cautions, each with its source.
pub fn cautions(cautions: &[Caution]) -> Vec<Value> {
    let told = |caution: &Caution| {
        json!({
            "title": caution.title(),
            "text": caution.text(),
            "source": caution.source(),
        })
    };
    cautions.iter().map(told).collect()
}

/// All advice on a piece, the worst first, its cures numbered from 1.
pub fn advised(advised: &Advised, sizes: &Sizes, unit: Unit) -> Value {
    let cures = cures(advised);
    let each: Vec<Value> = advised
        .advice
        .iter()
        .enumerate()
        .map(|(at, advice)| {
            let own = cures.iter().filter(|cure| cure.advice == at);
            let mut told = one(advice, advised, sizes);
            told["cures"] = own.map(|cure| cured(cure, unit)).collect();
            told
        })
        .collect();
    json!({ "advice": each })
}

fn cured(cure: &Cure, unit: Unit) -> Value {
    json!({
        "number": cure.number,
        "cure": cure.name,
        "sentence": cure.change.sentence(unit),
    })
}

fn one(advice: &Advice, advised: &Advised, sizes: &Sizes) -> Value {
    let fault = &advice.fault;
    let trust = authority(advice, advised, sizes);
    let working = |line: &working::LineId| advised.working.line(*line).subject.to_string();
    let paths: Vec<String> = advice.lines.iter().map(working).collect();
    json!({
        "code": fault.code,
        "severity": fault.severity.word().to_lowercase(),
        "part": fault.part,
        "found": fault.found,
        "allowed": fault.allowed,
        "advice": fault.cure,
        "source": trust.source,
        "status": trust.status,
        "paths": paths,
        "cautions": cautions(&advice.cautions),
    })
}

/// A question with its fields, for the description of the API.
pub(crate) fn parameters(question: &Question) -> Vec<Value> {
    use crate::care::Kind;
    let field = |field: &crate::care::Field| {
        let schema = match field.kind {
            Kind::Choice(list) => {
                let words: Vec<&str> = list().iter().map(|choice| choice.word).collect();
                json!({ "type": "string", "examples": words })
            }
            _ => json!({ "type": "string" }),
        };
        let hint = [field.label, field.hint, field.such_as()]
            .into_iter()
            .filter(|words| !words.is_empty())
            .collect::<Vec<_>>()
            .join("; ");
        json!({
            "name": field.name,
            "in": "query",
            "required": field.is_asked(),
            "description": hint,
            "schema": schema,
        })
    };
    question.fields.iter().map(field).collect()
}

//! The published schema tells the truth: what this program writes is valid under it, and every member written is described.

use std::collections::BTreeSet;

use layshaft::job::{Job, SetupId, Stage, demo, file};
use layshaft::units::System;
use serde_json::Value;

/// The part of JSON Schema that the schema uses.
struct Schema(Value);

impl Schema {
    fn resolved<'a>(&'a self, rule: &'a Value) -> Vec<&'a Value> {
        let referred = rule.get("$ref").and_then(Value::as_str).and_then(|path| self.0.pointer(path.trim_start_matches('#')));
        [Some(rule), referred].into_iter().flatten().collect()
    }

    fn check(&self, rule: &Value, value: &Value, at: &str, wrong: &mut Vec<String>) {
        for rule in self.resolved(rule) {
            let is_type = match rule.get("type").and_then(Value::as_str) {
                Some("object") => value.is_object(),
                Some("array") => value.is_array(),
                Some("string") => value.is_string(),
                Some("boolean") => value.is_boolean(),
                Some("integer") => value.is_u64(),
                Some("number") => value.is_number(),
                _ => true,
            };
            let is_one = rule.get("enum").and_then(Value::as_array).is_none_or(|options| options.contains(value));
            let is_const = rule.get("const").is_none_or(|constant| constant == value);
            if !(is_type && is_one && is_const) {
                wrong.push(format!("{at} is {value}"));
            }
            self.check_object(rule, value, at, wrong);
            self.check_array(rule, value, at, wrong);
        }
    }

    fn check_object(&self, rule: &Value, value: &Value, at: &str, wrong: &mut Vec<String>) {
        let (Some(properties), Some(members)) = (rule.get("properties").and_then(Value::as_object), value.as_object()) else { return };
        let required = rule.get("required").and_then(Value::as_array).into_iter().flatten().filter_map(Value::as_str);
        wrong.extend(required.filter(|name| !members.contains_key(*name)).map(|name| format!("{at} lacks {name}")));
        for (name, member) in members {
            match properties.get(name) {
                Some(rule) => self.check(rule, member, &format!("{at}.{name}"), wrong),
                None => wrong.push(format!("{at}.{name} is written but not described: add it to schema/job.schema.json")),
            }
        }
    }

    fn check_array(&self, rule: &Value, value: &Value, at: &str, wrong: &mut Vec<String>) {
        let (Some(items), Some(values)) = (rule.get("items"), value.as_array()) else { return };
        let within = |bound: &str, holds: fn(u64, u64) -> bool| {
            rule.get(bound).and_then(Value::as_u64).is_none_or(|bound| holds(values.len() as u64, bound))
        };
        if !within("minItems", |many, least| many >= least) || !within("maxItems", |many, most| many <= most) {
            wrong.push(format!("{at} has {} items", values.len()));
        }
        for (number, item) in values.iter().enumerate() {
            self.check(items, item, &format!("{at}[{number}]"), wrong);
        }
    }
}

#[track_caller]
fn check(job: &Job) {
    let schema = Schema(serde_json::from_str(include_str!("../../schema/job.schema.json")).unwrap());
    let value: Value = serde_json::from_str(&file::to_text(job)).unwrap();
    let mut wrong = Vec::new();
    schema.check(&schema.0, &value, "job", &mut wrong);
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The members and choices that a part of the schema names, each behind its place.
fn members(at: &str, rule: &Value, named: &mut BTreeSet<String>) {
    let choices = rule.get("enum").and_then(Value::as_array).into_iter().flatten();
    named.extend(choices.map(|choice| format!("{at} = {choice}")));
    for (name, rule) in ["properties", "$defs"].into_iter().filter_map(|part| rule.get(part)?.as_object()).flatten() {
        let at = format!("{at}.{name}");
        members(&at, rule, named);
        named.insert(at);
    }
    if let Some(rule) = rule.get("items") {
        members(&format!("{at}[]"), rule, named);
    }
}

/// What stands above the members, for whoever is told that they differ.
const RULE: &str = "\
# An older page would drop what it has no field for and write the job without it. Where a line differs, raise SCHEMA in src/job/file.rs
# and the const in schema/job.schema.json, unless that was done since the last release; then UPDATE_EXPECT=1 cargo test writes this file.
# DEVELOPERS.md says more under “A new version of a kept shape”.
";

#[test]
fn a_version_of_the_shape_has_the_members_it_had() {
    let schema: Value = serde_json::from_str(include_str!("../../schema/job.schema.json")).unwrap();
    let mut now = BTreeSet::new();
    members("job", &schema, &mut now);
    let text = now.iter().fold(RULE.to_owned(), |text, line| text + line + "\n");
    expect_test::expect_file![format!("../saved/job-members-v{}.txt", file::SCHEMA)].assert_eq(&text);
}

#[test]
fn the_demo_job_is_valid() {
    check(&demo::job());
}

#[test]
fn an_empty_job_is_valid_in_either_units() {
    check(&demo::empty(System::Inch));
    check(&demo::empty(System::Metric));
}

#[test]
fn a_job_with_everything_in_it_is_valid() {
    let mut job = demo::job();
    job.for_customer = Some(SetupId(2));
    job.setups[0].stages = vec![Stage { name: "Overdrive".into(), drive: "0.778".into(), ..Stage::default() }];
    check(&job);
}

//! The published schema is derived from the job, so it tells the truth: what this program writes is valid under it, and every member
//! written is described.

use std::collections::BTreeSet;

use layshaft::job::{Job, MOST_SETUPS, SetupId, Stage, demo, file};
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
                None => wrong.push(format!("{at}.{name} is written but not described: the schema is not derived from what is kept")),
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

/// The schema of a job, by the types that are kept.
fn derived() -> Value {
    let mut schema = serde_json::to_value(schemars::schema_for!(Job)).unwrap();
    drop_defaults(&mut schema);
    schema["title"] = "A Layshaft job".into();
    schema["description"] =
        "One job as it was typed. Everything a person types stands as text, untouched; a bare number means the unit of \
        the system beside it. Members that are not required may be left out. Files are UTF-8, at most 2,000,000 bytes."
            .into();
    schema["properties"]["schema"]["const"] = file::SCHEMA.into();
    schema["properties"]["setups"]["minItems"] = 1.into();
    schema["properties"]["setups"]["maxItems"] = MOST_SETUPS.into();
    schema
}

/// What a blank member is taken as stands in the page, not here.
fn drop_defaults(rule: &mut Value) {
    match rule {
        Value::Object(members) => {
            members.retain(|name, of| name != "default" || of.get("description").is_some());
            members.values_mut().for_each(drop_defaults);
        }
        Value::Array(items) => items.iter_mut().for_each(drop_defaults),
        _ => {}
    }
}

#[test]
fn the_schema_is_that_of_the_job() {
    let text = serde_json::to_string_pretty(&derived()).unwrap() + "\n";
    expect_test::expect_file!["../../schema/job.schema.json"].assert_eq(&text);
}

#[track_caller]
fn check(job: &Job) {
    let schema = Schema(derived());
    let value: Value = serde_json::from_str(&file::to_text(job)).unwrap();
    let mut wrong = Vec::new();
    schema.check(&schema.0, &value, "job", &mut wrong);
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The members and choices that a part of the schema names, each behind its place.
fn members(at: &str, rule: &Value, named: &mut BTreeSet<String>) {
    let documented = rule.get("oneOf").and_then(Value::as_array).into_iter().flatten().filter_map(|one| one.get("const"));
    let choices = rule.get("enum").and_then(Value::as_array).into_iter().flatten().chain(documented);
    named.extend(choices.map(|choice| format!("{at} = {choice}")));
    for (name, rule) in ["properties", "$defs"].into_iter().filter_map(|part| rule.get(part)?.as_object()).flatten() {
        let at = format!("{at}.{}", dashed(name));
        members(&at, rule, named);
        named.insert(at);
    }
    if let Some(rule) = rule.get("items") {
        members(&format!("{at}[]"), rule, named);
    }
}

/// A name of a type as one of a member: `EndPlay` becomes `end-play`.
fn dashed(name: &str) -> String {
    let dash = |(at, c): (usize, char)| (at > 0 && c.is_uppercase()).then_some('-').into_iter().chain(c.to_lowercase());
    name.char_indices().flat_map(dash).collect()
}

/// What stands above the members, for whoever is told that they differ.
const RULE: &str = "\
# An older page would drop what it has no field for and write the job without it. Where a line differs, raise SCHEMA in src/job/file.rs,
# unless that was done since the last release; then UPDATE_EXPECT=1 cargo test writes this file.
# DEVELOPERS.md says more under “A new version of a kept shape”.
";

#[test]
fn a_version_of_the_shape_has_the_members_it_had() {
    let schema = derived();
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

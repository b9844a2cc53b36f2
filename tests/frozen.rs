//! The answers of the command, number for number, as it gave them before its modules were moved.
//!
//! The files of `tests/frozen/` are the program's own earlier output: burner files drawn over all accepted ranges
//! (invented numbers, a night-school bell foundry) with their sheets, and other commands with their answers. They are
//! no truth, only a proof that a move changed nothing, and go when the moves are done. What is true stands in
//! `tests/reference/`.

#![cfg(feature = "cli")]

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

use serde_json::Value;

/// Keys that have a new name: the old path and the new one. A `*` stands for any step of the path, and those of the
/// old path fill those of the new one in turn. What hangs below the path moves with it; the first rule that fits counts.
const RENAMED: &[(&str, &str)] = &[];
/// Numbers that changed on purpose: the answer (`*` for any), the old path, and why.
const CHANGED: &[(&str, &str, &str)] = &[
    // One default of the roughness for options and files: 5e-6 m, where an option took 5 times 1e-6 m.
    // The last bit alone: 42466.587561011365 Pa became 42466.58756101135 Pa, and so on.
    (ROUGHNESS, "/nearest/*/exact_gauge_pressure_pa", "one default of the roughness"),
    (ROUGHNESS, "/nearest/*/heat_error", "one default of the roughness"),
    (ROUGHNESS, "/nearest/*/heat_gross_w", "one default of the roughness"),
    (ROUGHNESS, "/nearest/*/heat_net_w", "one default of the roughness"),
    ("*", "/air", "the blower is judged in a chamber as hot as at work, the gas as cold as at the gauge itself"),
    ("*", "/lighting/air_turned_down_range", "ends at the largest fire that the blower's block tells"),
    ("*", "/lighting/highest_heat_net_w", "the gas as cold as at the gauge itself"),
    ("*", "/lighting/lowest_heat_net_w", "the gas as cold as at the gauge itself"),
    ("*", "/jet/jets", "jets of all heads together"),
];
/// The answer that asks for the usual roughness.
const ROUGHNESS: &str = "jet --gas propane --gauge 5 psi --heat 26 kW net --drills number --altitude 1600 m";
/// Kinds of warnings that have a new name.
const RENAMED_KINDS: &[(&str, &str)] = &[];
/// Warnings that came or went on purpose: the answer (`*` for any), the old kind, and why.
const CHANGED_KINDS: &[(&str, &str, &str)] = &[];
/// Sentences for people, free to change.
const PROSE: &[&str] = &["/furnace/plan/*/what"];
/// Where warnings stand, and their kind: today's words, and later ones.
const WARNINGS: &[(&str, &str)] = &[("cautions", "caution"), ("warnings", "kind")];

/// One command with the answer it gave.
struct Frozen {
    name: String,
    arguments: Vec<String>,
    answer: Value,
}

/// What differs, and the rules that were of use.
#[derive(Default)]
struct Findings {
    compared: usize,
    differences: Vec<String>,
    used: BTreeSet<&'static str>,
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/frozen")
}

fn read(path: &Path) -> Value {
    serde_json::from_str(&fs::read_to_string(path).expect("a frozen answer")).expect("JSON")
}

fn sheets() -> Vec<Frozen> {
    let mut names: Vec<PathBuf> =
        fs::read_dir(folder()).expect("the folder").map(|entry| entry.unwrap().path()).collect();
    names.retain(|path| path.extension().is_some_and(|end| end == "toml") && path.with_extension("json").exists());
    names.sort();
    let sheet = |path: PathBuf| {
        let file = path.file_name().unwrap().to_str().unwrap().to_owned();
        Frozen { name: file.clone(), arguments: vec!["sheet".into(), file], answer: read(&path.with_extension("json")) }
    };
    names.into_iter().map(sheet).collect()
}

fn commands() -> Vec<Frozen> {
    let Value::Array(commands) = read(&folder().join("commands.json")) else { panic!("a list of commands") };
    let command = |mut entry: Value| {
        let arguments: Vec<String> = serde_json::from_value(entry["arguments"].take()).expect("arguments");
        Frozen { name: arguments.join(" "), arguments, answer: entry["answer"].take() }
    };
    commands.into_iter().map(command).collect()
}

/// The steps that the stars of a pattern stand for and what hangs below it, where it fits the path.
fn fits<'p>(pattern: &str, path: &'p str) -> Option<(Vec<&'p str>, &'p str)> {
    let (mut stars, mut rest) = (vec![], path);
    for want in pattern.split('/').skip(1) {
        let tail = rest.strip_prefix('/')?;
        let (step, below) = tail.find('/').map_or((tail, ""), |end| tail.split_at(end));
        match want {
            "*" => stars.push(step),
            _ if want == step => {}
            _ => return None,
        }
        rest = below;
    }
    Some((stars, rest))
}

fn renamed(path: &str, used: &mut BTreeSet<&'static str>) -> String {
    for &(old, new) in RENAMED {
        if let Some((stars, rest)) = fits(old, path) {
            used.insert(old);
            let filled = stars.iter().fold(new.to_owned(), |new, star| new.replacen('*', star, 1));
            return filled + rest;
        }
    }
    path.to_owned()
}

/// Whether a rule for this answer names the key.
fn is_excused(
    rules: &'static [(&str, &str, &str)],
    name: &str,
    names_key: impl Fn(&str) -> bool,
    used: &mut BTreeSet<&'static str>,
) -> bool {
    let rule = rules.iter().find(|(of, key, _)| (*of == "*" || *of == name) && names_key(key));
    rule.is_some_and(|&(_, key, _)| {
        used.insert(key);
        true
    })
}

fn leaves(value: &Value, path: String, into: &mut Vec<(String, Value)>) {
    match value {
        Value::Object(fields) => fields.iter().for_each(|(key, value)| leaves(value, format!("{path}/{key}"), into)),
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(at, value)| leaves(value, format!("{path}/{at}"), into));
            // A table that grew or shrank is a difference of its own.
            into.push((format!("{path}/length"), items.len().into()));
        }
        _ => into.push((path, value.clone())),
    }
}

fn at(answer: &Value, path: &str) -> Option<Value> {
    let whole = path.strip_suffix("/length").and_then(|list| answer.pointer(list)).and_then(Value::as_array);
    whole.map_or_else(|| answer.pointer(path).cloned(), |items| Some(items.len().into()))
}

/// Numbers by their bits, so that not even a last digit may move.
fn is_same(old: &Value, new: &Value) -> bool {
    match (old.as_f64(), new.as_f64()) {
        (Some(old), Some(new)) => old.to_bits() == new.to_bits(),
        _ => old == new,
    }
}

fn compare_numbers(frozen: &Frozen, new: &Value, findings: &mut Findings) {
    let mut old = vec![];
    leaves(&frozen.answer, String::new(), &mut old);
    for (path, old) in old {
        let is_warning = WARNINGS.iter().any(|(list, _)| fits(&format!("/{list}"), &path).is_some());
        if is_warning || PROSE.iter().any(|prose| fits(prose, &path).is_some()) {
            continue;
        }
        findings.compared += 1;
        let to = renamed(&path, &mut findings.used);
        let found = at(new, &to).unwrap_or(Value::Null);
        let named = |key: &str| fits(key, &path).is_some();
        if !is_same(&old, &found) && !is_excused(CHANGED, &frozen.name, named, &mut findings.used) {
            findings.differences.push(format!("{}: {path} was {old}, {to} is {found}", frozen.name));
        }
    }
}

/// Kind and setting of every warning, in a fixed order; none where an answer has no list of them.
fn warnings(answer: &Value) -> Option<Vec<(String, String)>> {
    let (list, word) = WARNINGS.iter().find_map(|(list, word)| Some((answer.get(list)?.as_array()?, word)))?;
    let text = |warning: &Value, key: &str| warning[key].as_str().unwrap_or_default().to_owned();
    let mut found: Vec<_> = list.iter().map(|warning| (text(warning, word), text(warning, "setting"))).collect();
    found.sort();
    Some(found)
}

fn compare_warnings(frozen: &Frozen, new: &Value, findings: &mut Findings) {
    let Some(old) = warnings(&frozen.answer) else { return };
    let mut new = warnings(new).unwrap_or_default();
    for (kind, setting) in old {
        let to = RENAMED_KINDS.iter().find(|(old, _)| *old == kind);
        findings.used.extend(to.map(|(old, _)| *old));
        let to = to.map_or(kind.as_str(), |(_, new)| *new);
        if let Some(place) = new.iter().position(|(of, at)| of == to && *at == setting) {
            new.remove(place);
        } else if !is_excused(CHANGED_KINDS, &frozen.name, |key| key == kind, &mut findings.used) {
            findings.differences.push(format!("{}: no more warns of {kind} at {setting:?}", frozen.name));
        }
    }
    for (kind, setting) in new {
        if !is_excused(CHANGED_KINDS, &frozen.name, |key| key == kind, &mut findings.used) {
            findings.differences.push(format!("{}: now warns of {kind} at {setting:?}", frozen.name));
        }
    }
}

fn answer(frozen: &Frozen) -> Result<Value, String> {
    let mut command = Command::new(env!("CARGO_BIN_EXE_jetwright"));
    let output = command.args(&frozen.arguments).args(["--format", "json"]).current_dir(folder()).output();
    let output = output.expect("the command starts");
    if !output.status.success() {
        return Err(format!("{}: {}", frozen.name, String::from_utf8_lossy(&output.stderr)));
    }
    serde_json::from_slice(&output.stdout).map_err(|error| format!("{}: {error}", frozen.name))
}

/// Runs every command, on as many threads as there are cores.
fn findings(all: &[Frozen]) -> Findings {
    let next = AtomicUsize::new(0);
    let work = || {
        let mut findings = Findings::default();
        while let Some(frozen) = all.get(next.fetch_add(1, Ordering::Relaxed)) {
            match answer(frozen) {
                Ok(new) => {
                    compare_numbers(frozen, &new, &mut findings);
                    compare_warnings(frozen, &new, &mut findings);
                }
                Err(message) => findings.differences.push(message),
            }
        }
        findings
    };
    let threads = thread::available_parallelism().map_or(2, usize::from);
    thread::scope(|scope| {
        let running: Vec<_> = (0..threads).map(|_| scope.spawn(work)).collect();
        running.into_iter().fold(Findings::default(), |mut sum, one| {
            let one = one.join().expect("no panic");
            sum.compared += one.compared;
            sum.differences.extend(one.differences);
            sum.used.extend(one.used);
            sum
        })
    })
}

#[test]
fn every_number_and_every_warning_is_as_before_the_moves() {
    let mut all = sheets();
    assert!(all.len() >= 44, "{} burner files", all.len());
    all.extend(commands());
    let mut findings = findings(&all);
    findings.differences.sort();
    let shown = findings.differences.iter().take(40).cloned().collect::<Vec<_>>().join("\n");
    let (count, compared) = (findings.differences.len(), findings.compared);
    assert!(count == 0, "{count} differences among {compared} values, the first of them:\n{shown}");
    assert!(compared > 20_000, "only {compared} values");

    let rules = RENAMED.iter().chain(RENAMED_KINDS).map(|(old, _)| *old);
    let excuses = CHANGED.iter().chain(CHANGED_KINDS).map(|(_, key, _)| *key);
    let idle: Vec<_> = rules.chain(excuses).filter(|rule| !findings.used.contains(rule)).collect();
    assert!(idle.is_empty(), "rules that no answer needs: {idle:?}");
}

#[test]
fn the_comparison_sees_a_last_digit_a_missing_row_and_a_warning() {
    let frozen = |text: &str| Frozen {
        name: "made up".into(),
        arguments: vec![],
        answer: serde_json::from_str(text).expect("JSON"),
    };
    let old = frozen(
        r#"{"rows": [{"heat_w": 0.1}, {"heat_w": null}], "cautions": [{"caution": "frost", "setting": "low"}]}"#,
    );
    let differences = |new: &str| {
        let (new, mut findings) = (serde_json::from_str(new).expect("JSON"), Findings::default());
        compare_numbers(&old, &new, &mut findings);
        compare_warnings(&old, &new, &mut findings);
        findings.differences.len()
    };
    let same = r#"{"rows": [{"heat_w": 0.1}, {"heat_w": null}], "warnings": [{"kind": "frost", "setting": "low"}]}"#;
    assert_eq!(differences(same), 0);
    assert_eq!(differences(&same.replace("0.1", "0.10000000000000002")), 1);
    assert_eq!(differences(&same.replace("0.1", "null")), 1);
    assert_eq!(differences(&same.replace(r#", {"heat_w": null}"#, "")), 1);
    assert_eq!(differences(&same.replace("low", "high")), 2);
    assert_eq!(fits("/a/*/c", "/a/7/c/d"), Some((vec!["7"], "/d")));
    assert_eq!(fits("/a/*/c", "/a/7/e"), None);
}

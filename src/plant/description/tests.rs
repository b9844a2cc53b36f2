use std::collections::BTreeSet;
use std::format;
use std::prelude::rust_2024::*;

use super::row::Rule;
use super::value::{Given, Kind};
use super::{At, Description, Example, Otherwise, Section};
use crate::furnace::MATERIALS;

/// Every section of the table once, its lists with as many entries as there is room for.
fn full() -> Description {
    let mut description = Description::default();
    for section in Description::SECTIONS {
        let outer = if section.list.is_empty() { 1 } else { Description::section(section.name).unwrap().most() };
        for first in 0..outer {
            for _ in 0..section.most() {
                assert!((section.add)(&mut description, [first, 0]), "{}.{}", section.name, section.list);
            }
            if section.is_list() {
                assert!(!(section.add)(&mut description, [first, 0]), "{}.{}", section.name, section.list);
            }
        }
    }
    description
}

fn places(section: &Section, description: &Description) -> Vec<At> {
    let mut places = std::vec![];
    let all: Result<(), ()> = section.each(description, |at| {
        places.push(at);
        Ok(())
    });
    all.unwrap();
    places
}

#[test]
fn every_example_and_default_reads_and_fills_its_own_field() {
    let mut description = full();
    for section in Description::SECTIONS.iter().chain(Description::QUESTIONS) {
        for row in section.rows {
            let field = format!("{}.{}", section.name, row.place);
            let examples = match row.example {
                Example::Used(examples) => examples.to_vec(),
                Example::Offered(example) => std::vec![example],
            };
            let default = match row.otherwise {
                Otherwise::This { value, .. } => value,
                _ => "",
            };
            for text in examples.into_iter().chain([default]).filter(|text| !text.is_empty()) {
                for at in places(section, &description) {
                    let read = (row.put)(&mut description, at, Given::Text(text));
                    assert!(read.is_ok(), "{field}: {text}: {}", read.unwrap_err());
                }
            }
            for at in places(section, &description) {
                assert!(row.is_said(&description, at), "{field}");
            }
            assert!((row.put)(&mut description, [0, 0], Given::Other).is_err(), "{field}");
            assert!(!row.help.is_empty() && row.help.iter().all(|line| line.len() > 1), "{field}");
        }
    }
}

#[test]
fn defaults_are_taken_where_nothing_was_said_and_only_there() {
    let mut description = full();
    let jet = Description::section("jet").unwrap();
    (jet.row("roughness").unwrap().put)(&mut description, [0, 0], Given::Text("3 um")).unwrap();
    description.take_defaults();
    let taken = description.jet.as_ref().unwrap();
    // A drilled bore has 5 um, exactly as a program would write it; the duct has twenty times as much.
    assert_eq!(taken.roughness.map(|roughness| (roughness.meters() * 1e9).round()), Some(3000.0));
    // One jet to a head: that hangs on the heads, and the entries take it.
    assert_eq!(taken.count, None);
    assert_eq!(description.duct[3].roughness.map(crate::quantity::Length::meters), Some(1.0e-4));
    assert_eq!(description.line.as_ref().unwrap().roughness.map(crate::quantity::Length::meters), Some(2.0e-6));
    assert!(taken.bore.is_none() && taken.edge.is_none());
}

#[test]
fn places_keys_and_options_are_each_of_one_input() {
    let mut known = BTreeSet::new();
    for section in Description::SECTIONS.iter().chain(Description::QUESTIONS) {
        assert_eq!(section.rows.iter().filter(|row| row.key == section.list).count(), 0);
        for row in section.rows {
            assert!(known.insert((section.name, row.place)), "{}.{}", section.name, row.place);
        }
        for list in section.lists {
            assert!(Description::list(section.name, list).is_some(), "{list}");
        }
        for rule in section.rules {
            let (Rule::NeedsSection(_, other) | Rule::NotBeside(_, other)) = rule else { continue };
            assert!(Description::section(other).is_some(), "{other}");
        }
    }
}

#[test]
fn a_rule_by_word_knows_every_word_and_help_names_every_choice_of_material() {
    for section in Description::SECTIONS {
        for rule in section.rules {
            let Rule::ByWord(key, words) = rule else { continue };
            let kind = (section.row(key).unwrap().kind)();
            assert!(kind.words().eq(words.iter().map(|(word, _)| *word)), "{key}");
        }
    }
    let material = Description::section("layer").unwrap().row("material").unwrap();
    let help = material.help.concat();
    for data in MATERIALS {
        assert!(help.contains(data.key), "{}", data.key);
    }
    assert!(matches!((material.kind)(), Kind::Text { most: 60 }));
}

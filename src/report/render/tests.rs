//! A column of a made-up table in every format.

use std::prelude::rust_2024::*;
use std::vec;

use super::{csv, html, json, keys, text};
use crate::report::field::{Value, columns};
use crate::report::tree::{Member, Node, Row, Section, Table, Tree};
use crate::report::units::Shop;

/// An invented ladle of a night-school bell foundry.
struct Ladle {
    name: &'static str,
    bronze: f64,
    half: Option<f64>,
}

columns! {
    /// A ladle.
    LADLE, ladle(row: &Ladle);
    /// Name of the ladle.
    ladle_name, "", Word, Page(0) => row.name;
    /// Bronze it pours a second.
    bronze_kg_per_s, "bronze", MassFlow[within], Page(10) => Value::from(row.bronze).within(row.half);
}

const LADLES: Section = Section {
    key: "ladles",
    name: "ladles",
    words: "The ladles, an array",
    about: "",
    is_many: true,
    members: &[Member::Columns(LADLE)],
};

const ANSWER: Section = Section {
    key: "",
    name: "jetwright pour",
    words: "",
    about: "",
    is_many: false,
    members: &[Member::Section(&LADLES)],
};

fn tree() -> Tree {
    let ladles = [
        Ladle { name: "<small>", bronze: 0.01, half: Some(0.001) },
        Ladle { name: "large & old", bronze: 0.02, half: None },
    ];
    let rows = ladles.iter().map(|row| Row::of([ladle(row)])).collect();
    let table = Node::Table(Table { section: Some(&LADLES), titles: vec![], rows });
    Tree { section: &ANSWER, csv: Some(&LADLES), nodes: vec![table] }
}

#[test]
fn a_column_declared_once_stands_in_every_format_and_in_the_document() {
    let (metric, inch) = (Shop::of(false), Shop::of(true));
    // 0.01 kg/s is 36 kg/h and, at 0.453 592 37 kg a pound, 79.4 lb/h.
    let page = text::render(&tree(), &metric);
    assert!(page.contains("bronze kg/h") && page.contains("36.0 ±3.6") && page.contains("72.0"), "{page}");
    let page = text::render(&tree(), &inch);
    assert!(page.contains("bronze lb/h") && page.contains("79.4 ±7.9"), "{page}");
    let object = json::object(&tree());
    assert_eq!(object["ladles"][0]["bronze_kg_per_s"], 0.01);
    assert!((object["ladles"][0]["bronze_high_kg_per_s"].as_f64().unwrap() - 0.011).abs() < 1e-15);
    assert!(object["ladles"][1]["bronze_low_kg_per_s"].is_null());
    let table = csv::render(&tree()).unwrap();
    assert!(table.starts_with("ladle_name,bronze_kg_per_s,bronze_low_kg_per_s,bronze_high_kg_per_s\n"), "{table}");
    let document = keys::document(&[&ANSWER]);
    assert!(document.contains("### bronze_kg_per_s\n\nUnit: kg/s. Bronze it pours a second.\n"), "{document}");
    assert!(document.contains("### bronze_low_kg_per_s"));
}

#[test]
fn a_page_of_html_is_whole_and_takes_no_markup_from_a_name() {
    let page = html::render(&tree(), "a <b> & c", &Shop::of(false));
    assert!(page.starts_with("<!DOCTYPE html>") && page.ends_with("</html>\n"));
    assert!(page.contains("<title>a &lt;b&gt; &amp; c</title>"));
    assert!(page.contains("&lt;small&gt;") && page.contains("large &amp; old") && page.contains("36.0 ±3.6"));
    for tag in ["html", "head", "body", "table", "thead", "tbody"] {
        let count = |mark: &str| page.matches(mark).count();
        assert_eq!(count(&std::format!("<{tag}>")) + count(&std::format!("<{tag} ")), count(&std::format!("</{tag}>")));
    }
    assert!(!page.contains("<small>") && !page.contains("http"), "it needs nothing beside it");
}

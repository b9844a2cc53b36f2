//! The answer as one tree: what every format is made of.

use std::prelude::rust_2024::*;

use crate::report::field::{Cells, Column, Value};
use crate::report::units::Shop;

/// What programs find at one place of an answer: stated once, so that its documentation needs no data.
#[derive(Debug, PartialEq)]
pub struct Section {
    /// Its key in the answer it belongs to; empty for a whole answer.
    pub key: &'static str,
    /// Its name in the documentation.
    pub name: &'static str,
    /// What stands under that key; empty for a whole answer.
    pub words: &'static str,
    /// What its own heading says.
    pub about: &'static str,
    /// Whether it is an array, a row a thing.
    pub is_many: bool,
    /// What it holds, in the order programs get it.
    pub members: &'static [Member],
}

/// What a section holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Member {
    /// Columns.
    Columns(&'static [Column]),
    /// A section of its own.
    Section(&'static Section),
}

impl Section {
    /// Its columns, without those of the sections in it.
    pub fn columns(&self) -> impl Iterator<Item = &'static Column> {
        self.members.iter().flat_map(|member| match member {
            Member::Columns(columns) => columns.iter(),
            Member::Section(_) => [].iter(),
        })
    }

    /// The sections in it.
    pub fn sections(&self) -> impl Iterator<Item = &'static Section> {
        self.members.iter().filter_map(|member| match member {
            Member::Section(section) => Some(*section),
            Member::Columns(_) => None,
        })
    }
}

/// A row of a table, or the fields of a block.
#[derive(Clone, Debug, Default)]
pub struct Row {
    /// Its values.
    pub cells: Vec<Cells>,
    /// The units its question was asked in, where the page keeps to them.
    pub asked: Option<Shop>,
}

impl Row {
    /// A row of these values.
    #[must_use]
    pub fn of(cells: impl Into<Vec<Cells>>) -> Self {
        Self { cells: cells.into(), asked: None }
    }

    /// Columns and values, side by side, and whether the page prints them.
    pub fn iter(&self) -> impl Iterator<Item = (&'static Column, &Value, bool)> {
        let cells = self.cells.iter();
        cells.flat_map(|cells| cells.iter().map(|(column, value)| (column, value, cells.prints(column))))
    }

    /// The same for programs alone.
    #[must_use]
    pub fn for_programs(self) -> Self {
        Self { cells: self.cells.into_iter().map(Cells::for_programs).collect(), ..self }
    }
}

/// A part of an answer.
#[derive(Clone, Debug)]
pub enum Node {
    /// Parts under a heading.
    Block(Block),
    /// Fields, each with its label.
    Fields(Row),
    /// A table.
    Table(Table),
    /// A sentence, or several, after a label.
    Said {
        /// The label; may be empty.
        label: String,
        /// The sentences.
        text: String,
    },
    /// Sentences without a margin.
    Line(String),
    /// Lines that stand as they are.
    Drawn(String),
}

/// Parts under a heading.
#[derive(Clone, Debug, Default)]
pub struct Block {
    /// Where programs find its fields; none where it is for the page alone.
    pub section: Option<&'static Section>,
    /// Its heading; may be empty.
    pub title: String,
    /// Its parts.
    pub nodes: Vec<Node>,
}

/// A table.
#[derive(Clone, Debug, Default)]
pub struct Table {
    /// Where programs find its rows; none where it is for the page alone.
    pub section: Option<&'static Section>,
    /// Titles that say more than the label of their column, by its key.
    pub titles: Vec<(&'static str, String)>,
    /// The rows.
    pub rows: Vec<Row>,
}

impl Node {
    /// Fields of one list.
    #[must_use]
    pub fn fields(cells: impl Into<Vec<Cells>>) -> Self {
        Node::Fields(Row::of(cells))
    }

    /// A sentence without a label.
    #[must_use]
    pub fn said(text: impl Into<String>) -> Self {
        Self::labeled("", text)
    }

    /// A sentence after a label.
    #[must_use]
    pub fn labeled(label: impl Into<String>, text: impl Into<String>) -> Self {
        Node::Said { label: label.into(), text: text.into() }
    }

    /// What programs find under a section, without a heading on the page.
    #[must_use]
    pub fn block(section: &'static Section, nodes: Vec<Node>) -> Self {
        Node::Block(Block { section: Some(section), title: String::new(), nodes })
    }

    /// Parts under a heading, for the page alone.
    #[must_use]
    pub fn headed(title: impl Into<String>, nodes: Vec<Node>) -> Self {
        Node::Block(Block { section: None, title: title.into(), nodes })
    }

    /// A table of the page alone.
    #[must_use]
    pub fn view(rows: Vec<Row>, titles: Vec<(&'static str, String)>) -> Self {
        Node::Table(Table { section: None, titles, rows })
    }

    /// Rows for programs alone.
    #[must_use]
    pub fn rows(section: &'static Section, rows: Vec<Row>) -> Self {
        let rows = rows.into_iter().map(Row::for_programs).collect();
        Node::Table(Table { section: Some(section), rows, ..Table::default() })
    }
}

/// A whole answer.
#[derive(Clone, Debug)]
pub struct Tree {
    /// Its root for programs.
    pub section: &'static Section,
    /// The section whose rows are its CSV; none where that is the answer's own row.
    pub csv: Option<&'static Section>,
    /// Its parts, in the order of the page.
    pub nodes: Vec<Node>,
}

/// An answer while it is put together, from the top of the page to its end.
#[derive(Debug, Default)]
pub(crate) struct Page {
    nodes: Vec<Node>,
    is_under_heading: bool,
}

impl Page {
    /// Begins a block: what follows stands under it.
    pub(crate) fn heading(&mut self, title: impl Into<String>) {
        self.nodes.push(Node::headed(title, Vec::new()));
        self.is_under_heading = true;
    }

    /// Adds a part that stands under no heading.
    pub(crate) fn top(&mut self, node: Node) {
        self.nodes.push(node);
        self.is_under_heading = false;
    }

    /// Adds a part under the last heading.
    pub(crate) fn push(&mut self, node: Node) {
        match self.nodes.last_mut() {
            Some(Node::Block(block)) if self.is_under_heading => block.nodes.push(node),
            _ => self.nodes.push(node),
        }
    }

    /// Adds sentences after a label.
    pub(crate) fn said(&mut self, label: impl Into<String>, text: impl Into<String>) {
        self.push(Node::labeled(label, text));
    }

    /// The parts.
    pub(crate) fn done(self) -> Vec<Node> {
        self.nodes
    }
}

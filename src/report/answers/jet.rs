//! The bore for a heat, and the sizes next to it.

use std::format;
use std::prelude::rust_2024::*;
use std::string::ToString;
use std::vec;

use crate::orifice::{Bore, Drill, JetFlow};
use crate::quantity::{AbsolutePressure, GaugePressure, Length};
use crate::report::field::{Value, columns};
use crate::report::tree::{Member, Node, Row, Section, Table, Tree};
use crate::report::units::Shop;
use crate::report::warnings::WARNINGS;

/// The bore for a heat at a gauge pressure.
pub struct JetAnswer {
    /// Air on the site.
    pub ambient: AbsolutePressure,
    /// What the gauge reads.
    pub gauge: GaugePressure,
    /// The bore.
    pub bore: Length,
    /// The sizes next to it.
    pub nearest: Vec<Near>,
}

/// A size next to the wanted bore.
pub struct Near {
    /// Its bore behind the tube.
    pub bore: Bore,
    /// The size.
    pub drill: Drill,
    /// What it passes.
    pub flow: JetFlow,
    /// Its heat over the heat asked, less one.
    pub heat_error: f64,
    /// The gauge that gives the heat asked; none in range.
    pub gauge: Option<GaugePressure>,
}

/// The answer; its sentences in these units.
#[must_use]
pub fn tree(answer: &JetAnswer, shop: &Shop) -> Tree {
    let said = format!("The bore for it is {} at {}.", shop.bore(answer.bore), shop.gauge(answer.gauge));
    let rows = answer.nearest.iter().map(|size| Row::of([near(size)])).collect();
    let nodes = vec![
        Node::fields([bore(answer)]),
        Node::Line(said),
        Node::Table(Table { section: Some(&NEAREST), titles: vec![], rows }),
    ];
    Tree { section: &ANSWER, csv: Some(&NEAREST), nodes }
}

columns! {
    /// The bore for a heat.
    pub(crate) BORE, bore(answer: &JetAnswer);
    ambient_pressure_pa, "ambient pressure", LowPressure, Programs => answer.ambient.pascals();
    gauge_pressure_pa, "gauge pressure", Gauge, Programs => answer.gauge.pascals();
    /// Diameter of the bore: the one that gives the heat exactly, that of a size of the list, or that of the sheet's
    /// jet.
    bore_m, "bore", Length, Programs => answer.bore.meters();
}

columns! {
    /// A size next to the bore.
    pub(crate) NEAR, near(near: &Near);
    /// Name of what the object describes: a drill or tip, the burner, its jet (the words of the file, or `bore`), or a
    /// setting.
    name, "size", Word, Page(0) => near.drill.to_string();
    /// Diameter of the bore: the one that gives the heat exactly, that of a size of the list, or that of the sheet's
    /// jet.
    bore_m, "bore", Bore, Page(10) => near.drill.diameter().meters();
    heat_gross_w, "heat", HeatGross, Inch(20) => near.flow.heat_gross.watts();
    heat_net_w, "heat", HeatNet, Metric(20) => near.flow.heat_net.watts();
    /// Heat with this size over the heat asked, less one.
    heat_error, "heat error", FineShare, Page(30) => Value::from(near.heat_error).said(Shop::off_by(near.heat_error));
    /// Gauge pressure at which this size gives the heat asked; null when no gauge pressure in range does.
    exact_gauge_pressure_pa, "gauge for exact heat", Gauge, Page(40) => Value::from(near.gauge.map(|gauge| gauge.pascals())).or_said("out of reach");
}

/// The answer for programs.
pub const ANSWER: Section = Section {
    key: "",
    name: "jetwright jet",
    words: "",
    about: "An object with the bore for the heat asked, and the sizes of the list next to it, the smaller first.",
    is_many: false,
    members: &[Member::Columns(BORE), Member::Section(&NEAREST), Member::Section(&WARNINGS)],
};

/// Its nearest, for programs.
pub(crate) const NEAREST: Section = Section {
    key: "nearest",
    name: "jet: nearest",
    words: "The sizes, an array of one or two objects",
    about: "",
    is_many: true,
    members: &[Member::Columns(NEAR)],
};

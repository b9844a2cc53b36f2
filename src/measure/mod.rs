//! How sure each number is, and what a weighing or a meter's reading says of it.
//!
//! A result's uncertainty is that of its inputs carried through exact derivatives (the [`Dual`](crate::Dual) number),
//! and each budget says which input matters most. A weighing of the cylinder, or a gas meter, measures the jet itself;
//! it is joined with the model by inverse variance. Uncertainties are stated at k = 2, about 95 in 100.

mod bore_made;
mod budget;
mod comparison;
mod joining;
mod meter;
mod odds;
mod plan;
mod settings;
mod source;
mod spreads;
mod weighing;

pub use bore_made::{BoreMade, DRILLED_BY_HAND, TIP_OVER_MARK, bore_made};
pub use budget::{Budget, Measurand, budgets};
pub use comparison::{Compared, Comparison, Finding, compare};
pub use joining::{BEYOND_BELIEF, Joined, Trust, join, of_hole};
pub use meter::metered_mass;
pub use odds::{odds_beyond, share_below};
pub use plan::{Plan, plan};
pub use settings::{Answers, Tie, UncertainBurner, UncertainJet};
pub use source::Source;
pub use spreads::{Dial, DialClass, Sizing, Spreads, starting_bore};
pub use weighing::{Measured, Reading, Run, RunResult, Trend, WeighingError, measured_jet, of_supply, run_result};

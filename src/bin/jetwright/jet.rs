//! `jetwright jet`.

use crate::arguments::JetArguments;
use crate::command_error::CommandError;

/// The bore for a heat, and the nearest sizes of a list.
pub fn run(arguments: &JetArguments) -> Result<String, CommandError> {
    let _site = arguments.shared.site()?;
    let _gas = (&arguments.shared.gas, arguments.shared.gas_temperature());
    let _shape = arguments.shape.shape()?;
    Ok(String::new())
}

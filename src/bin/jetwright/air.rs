//! `jetwright air`.

use crate::arguments::AirArguments;
use crate::command_error::CommandError;

/// The air a heat needs.
pub fn run(arguments: &AirArguments) -> Result<String, CommandError> {
    let _site = arguments.shared.site()?;
    let _gas = (&arguments.shared.gas, arguments.shared.gas_temperature());
    Ok(String::new())
}

//! `jetwright flow`.

use crate::arguments::FlowArguments;
use crate::command_error::CommandError;

/// Gas flow and heat at each gauge pressure, in the order asked.
pub fn run(arguments: &FlowArguments) -> Result<String, CommandError> {
    let _site = arguments.shared.site()?;
    let _gas = (&arguments.shared.gas, arguments.shared.gas_temperature());
    let _jet = (arguments.size()?, arguments.shape.shape()?);
    Ok(String::new())
}

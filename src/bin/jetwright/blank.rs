//! `jetwright blank`.

use clap::Args;
use clap::builder::PossibleValuesParser;
use jetwright::file::begin::{TRADES, trade};
use jetwright::file::blank::{blank, for_trade, short};

/// Options of `jetwright blank`.
#[derive(Debug, Args)]
pub struct BlankArguments {
    /// As few keys as a sheet needs.
    #[arg(long, conflicts_with = "trade")]
    pub short: bool,
    /// For a trade, with its stages and words.
    #[arg(long = "for", value_name = "TRADE", value_parser = PossibleValuesParser::new(TRADES.iter().map(|trade| trade.key)))]
    pub trade: Option<String>,
}

/// A burner file to start from.
pub fn run(arguments: &BlankArguments) -> String {
    match arguments.trade.as_deref().and_then(trade) {
        Some(trade) => for_trade(trade),
        None if arguments.short => short(),
        None => blank(),
    }
}

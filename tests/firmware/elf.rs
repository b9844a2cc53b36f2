//! What a program for the chip holds: its symbols and the sizes of its sections.

use std::path::Path;

pub struct Program {
    pub symbols: Vec<String>,
    /// Name, size in memory, whether it is written or zeroed at the start.
    pub sections: Vec<(String, u32, bool)>,
}

const SYMBOLS: u32 = 2;
const ALLOCATED: u32 = 2;
const WRITABLE: u32 = 1;

/// Reads a little-endian 32-bit ELF file.
pub fn read(path: &Path) -> Program {
    let bytes = std::fs::read(path).expect("the program was built");
    assert_eq!(&bytes[..6], b"\x7fELF\x01\x01");
    let word = |at: usize| u32::from_le_bytes(bytes[at..at + 4].try_into().unwrap());
    let half = |at: usize| usize::from(u16::from_le_bytes(bytes[at..at + 2].try_into().unwrap()));
    let text = |from: usize| {
        let end = bytes[from..].iter().position(|&byte| byte == 0).unwrap();
        String::from_utf8_lossy(&bytes[from..from + end]).into_owned()
    };
    let (table, size, count, names) = (word(32) as usize, half(46), half(48), half(50));
    let header = |index: usize, field: usize| word(table + index * size + 4 * field);
    let mut program = Program { symbols: Vec::new(), sections: Vec::new() };
    for index in 0..count {
        let name = text(header(names, 4) as usize + header(index, 0) as usize);
        let flags = header(index, 2);
        if flags & ALLOCATED != 0 {
            program.sections.push((name, header(index, 5), flags & WRITABLE != 0));
        }
        if header(index, 1) == SYMBOLS {
            let strings = header(header(index, 6) as usize, 4) as usize;
            let (start, bytes_of_all) = (header(index, 4) as usize, header(index, 5) as usize);
            program
                .symbols
                .extend((start..start + bytes_of_all).step_by(16).map(|at| text(strings + word(at) as usize)));
        }
    }
    program
}

impl Program {
    /// Symbols of helpers for double precision, as ARM's run-time ABI and the compiler's library name them.
    pub fn double_precision_helpers(&self) -> Vec<&String> {
        let is_helper = |symbol: &&String| {
            let abi = symbol.contains("__aeabi_d") && !symbol.contains("__aeabi_div0");
            let conversions =
                ["f2d", "i2d", "ui2d", "l2d", "ul2d"].iter().any(|name| symbol.ends_with(&format!("__aeabi_{name}")));
            let library = symbol.starts_with("__") || symbol.contains("compiler_builtins");
            let parts = ["df2", "df3", "dfs", "dfd", "sidf", "didf"];
            abi || conversions || library && parts.iter().any(|part| symbol.contains(part))
        };
        self.symbols.iter().filter(is_helper).collect()
    }

    /// Bytes of flash without the table of interrupts.
    pub fn flash(&self) -> u32 {
        self.sections
            .iter()
            .filter(|(name, _, written)| !written && name != ".vector_table")
            .map(|section| section.1)
            .sum()
    }

    /// Bytes of RAM that are not stack.
    pub fn ram(&self) -> u32 {
        self.sections.iter().filter(|(_, _, written)| *written).map(|section| section.1).sum()
    }
}

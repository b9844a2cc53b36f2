//! A value of ours kept in a struct of C, which knows its size and nothing else.

#![allow(unsafe_code, reason = "a value is put into plain words and borrowed from them; each block says why it holds")]

use core::mem::MaybeUninit;

use super::status::JetwrightStatus;

/// Says that the words hold a value: a struct C has not had made does not carry it but by chance.
pub(super) const MADE: u32 = 0x4A57_4D44;

/// What C may copy word for word, and forget.
///
/// # Safety
///
/// The value owns nothing outside itself, and points at nothing.
pub(super) unsafe trait Plain {}

// SAFETY: what is `Copy` owns nothing; that it points at nothing is seen where it is kept.
unsafe impl<T: Copy> Plain for T {}

/// The size and alignment of a value must fit the words.
const fn fits<T, W>(words: usize) {
    assert!(size_of::<T>() <= words * size_of::<W>(), "more words are needed");
    assert!(align_of::<T>() <= align_of::<W>(), "wider words are needed");
}

pub(super) fn keep<T: Plain, W, const WORDS: usize>(words: &mut [MaybeUninit<W>; WORDS], value: T) {
    const { fits::<T, W>(WORDS) };
    // SAFETY: the words are as large and as aligned as `T`, which is checked when this compiles, and are ours alone.
    unsafe { words.as_mut_ptr().cast::<T>().write(value) }
}

pub(super) fn kept<T: Plain, W, const WORDS: usize>(
    made: u32,
    words: &[MaybeUninit<W>; WORDS],
) -> Result<&T, JetwrightStatus> {
    const { fits::<T, W>(WORDS) };
    if made != MADE {
        return Err(JetwrightStatus::NotMade);
    }
    // SAFETY: as above; the mark says that `keep` has put a `T` there.
    Ok(unsafe { &*words.as_ptr().cast::<T>() })
}

pub(super) fn kept_mut<T: Plain, W, const WORDS: usize>(
    made: u32,
    words: &mut [MaybeUninit<W>; WORDS],
) -> Result<&mut T, JetwrightStatus> {
    const { fits::<T, W>(WORDS) };
    if made != MADE {
        return Err(JetwrightStatus::NotMade);
    }
    // SAFETY: as above, and the words are borrowed for as long as the value is.
    Ok(unsafe { &mut *words.as_mut_ptr().cast::<T>() })
}

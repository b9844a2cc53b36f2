//! A value of ours kept in a struct of C, which knows its size and nothing else.

#![allow(unsafe_code, reason = "a value is put into plain words and borrowed from them; each block says why it holds")]

use super::status::JetwrightStatus;

/// Says that the words hold a value: a struct C has not had made does not carry it but by chance.
pub(super) const MADE: u32 = 0x4A57_4D44;

/// The size and alignment of a value must fit the words.
pub(super) const fn fits<T>(words: usize) {
    assert!(core::mem::size_of::<T>() <= words * 4, "more words are needed");
    assert!(core::mem::align_of::<T>() <= 4);
    assert!(!core::mem::needs_drop::<T>());
}

pub(super) fn keep<T: Copy, const WORDS: usize>(words: &mut [u32; WORDS], value: T) {
    const { fits::<T>(WORDS) };
    // SAFETY: the words are as large and as aligned as `T`, which is checked when this compiles, and are ours alone.
    unsafe { words.as_mut_ptr().cast::<T>().write(value) }
}

pub(super) fn kept<T: Copy, const WORDS: usize>(made: u32, words: &[u32; WORDS]) -> Result<&T, JetwrightStatus> {
    const { fits::<T>(WORDS) };
    if made != MADE {
        return Err(JetwrightStatus::NotMade);
    }
    // SAFETY: as above; the mark says that `keep` has put a `T` there.
    Ok(unsafe { &*words.as_ptr().cast::<T>() })
}

pub(super) fn kept_mut<T: Copy, const WORDS: usize>(
    made: u32,
    words: &mut [u32; WORDS],
) -> Result<&mut T, JetwrightStatus> {
    const { fits::<T>(WORDS) };
    if made != MADE {
        return Err(JetwrightStatus::NotMade);
    }
    // SAFETY: as above, and the words are borrowed for as long as the value is.
    Ok(unsafe { &mut *words.as_mut_ptr().cast::<T>() })
}

//! One statement of a section makes its struct and its part of the table.

/// Declares a section: what it is, where it stands in the description, its rules, its lists and its keys.
///
/// A key is two lines: its help, and `key: Type [range] as "option", otherwise, example;`. The range of a quantity is
/// an [`Input`](crate::Input), that of a text its longest length; a choice has none.
macro_rules! inputs {
    (
        $(#[doc = $about:literal])+
        $part:ident: $place:tt, $names:tt, $presence:expr;
        lists { $($(#[doc = $list_help:literal])+ $inner:ident: $inner_part:ident, $inner_most:expr;)* }
        rules [$($rule:expr),* $(,)?]
        {
            $(
                $(#[doc = $help:literal])+
                $key:ident: $type:ty $([$stated:expr])? $(as $option:literal)?, $otherwise:expr, $example:expr;
            )*
        }
    ) => {
        $(#[doc = $about])+
        #[allow(rustdoc::broken_intra_doc_links)]
        #[derive(Clone, Debug, Default, PartialEq)]
        pub struct $part {
            $($(#[doc = $list_help])+ pub $inner: heapless::Vec<$inner_part, { $inner_most }>,)*
            $($(#[doc = $help])+ pub $key: Option<$type>,)*
        }

        impl $part {
            /// Its part of the table.
            pub const SECTION: $crate::plant::description::row::Section = $crate::plant::description::row::Section {
                name: names!(@section $names),
                list: names!(@list $names),
                help: &[$($about),+],
                presence: $presence,
                rows: Self::ROWS,
                lists: &[$(stringify!($inner)),*],
                rules: Self::RULES,
                count: |description, at| {
                    let _ = at;
                    reach!(@count description, at, $place)
                },
                add: |description, at| {
                    let _ = at;
                    reach!(@add description, at, $place, $part)
                },
            };
            const RULES: &'static [$crate::plant::description::row::Rule] = &[$($rule),*];
            const ROWS: &'static [$crate::plant::description::row::Row] = &[$(
                $crate::plant::description::row::Row {
                    key: $crate::plant::description::row::plain(stringify!($key)),
                    place: names!(@place $names, $key),
                    option: option!($($option)?),
                    kind: || <$type as $crate::plant::description::value::Value>::kind(stated!($($stated)?)),
                    otherwise: $otherwise,
                    example: $example,
                    help: &[$($help),+],
                    put: |description, at, given| {
                        let _ = at;
                        let Some(part) = reach!(@mut description, at, $place) else { return Ok(()) };
                        $crate::plant::description::value::put(&mut part.$key, given, stated!($($stated)?))
                    },
                    seen: |description, at| {
                        let _ = at;
                        reach!(@get description, at, $place)
                            .map(|part| &part.$key as &dyn $crate::plant::description::value::Held)
                    },
                },
            )*];
        }

        const _: () = assert!(
            $crate::plant::description::row::names_keys($part::ROWS, $part::SECTION.lists, $part::RULES),
            "a rule names no key of its section"
        );
    };
}

/// The section and the key of its list, of `"section"` or `("section" "list")`.
macro_rules! names {
    (@section ($section:literal $list:literal)) => {
        $section
    };
    (@section $section:literal) => {
        $section
    };
    (@list ($section:literal $list:literal)) => {
        $list
    };
    (@list $section:literal) => {
        ""
    };
    (@place ($section:literal $list:literal), $key:ident) => {
        concat!($list, ".", stringify!($key))
    };
    (@place $section:literal, $key:ident) => {
        $crate::plant::description::row::plain(stringify!($key))
    };
}

/// What is stated of a type: a range, a length, or nothing.
macro_rules! stated {
    () => {
        ()
    };
    ($stated:expr) => {
        $stated
    };
}

/// The option's own name, if it has one.
macro_rules! option {
    () => {
        None
    };
    ($option:literal) => {
        Some($option)
    };
}

/// The way to a section: `(always field)`, `(asked field)` (of a single question), `(one field)`, `(list field)`, `(of field list)` or `(in field list)`, the
/// last for a list within an entry of a list.
macro_rules! reach {
    (@get $description:ident, $at:ident, (always $field:ident)) => {
        Some(&$description.$field)
    };
    (@mut $description:ident, $at:ident, (always $field:ident)) => {
        Some(&mut $description.$field)
    };
    (@count $description:ident, $at:ident, (always $field:ident)) => {{
        let _ = $description;
        1
    }};
    (@add $description:ident, $at:ident, (always $field:ident), $part:ident) => {{
        let _ = $description;
        true
    }};

    (@get $description:ident, $at:ident, (asked $field:ident)) => {
        Some(&$description.asked.$field)
    };
    (@mut $description:ident, $at:ident, (asked $field:ident)) => {
        Some(&mut $description.asked.$field)
    };
    (@count $description:ident, $at:ident, (asked $field:ident)) => {{
        let _ = $description;
        1
    }};
    (@add $description:ident, $at:ident, (asked $field:ident), $part:ident) => {{
        let _ = $description;
        true
    }};

    (@get $description:ident, $at:ident, (one $field:ident)) => {
        $description.$field.as_ref()
    };
    (@mut $description:ident, $at:ident, (one $field:ident)) => {
        $description.$field.as_mut()
    };
    (@count $description:ident, $at:ident, (one $field:ident)) => {
        usize::from($description.$field.is_some())
    };
    (@add $description:ident, $at:ident, (one $field:ident), $part:ident) => {{
        $description.$field = Some($part::default());
        true
    }};

    (@get $description:ident, $at:ident, (list $field:ident)) => {
        $description.$field.get($at[0])
    };
    (@mut $description:ident, $at:ident, (list $field:ident)) => {
        $description.$field.get_mut($at[0])
    };
    (@count $description:ident, $at:ident, (list $field:ident)) => {
        $description.$field.len()
    };
    (@add $description:ident, $at:ident, (list $field:ident), $part:ident) => {
        $description.$field.push($part::default()).is_ok()
    };

    (@get $description:ident, $at:ident, (of $field:ident $list:ident)) => {
        $description.$field.as_ref().and_then(|outer| outer.$list.get($at[1]))
    };
    (@mut $description:ident, $at:ident, (of $field:ident $list:ident)) => {
        $description.$field.as_mut().and_then(|outer| outer.$list.get_mut($at[1]))
    };
    (@count $description:ident, $at:ident, (of $field:ident $list:ident)) => {
        $description.$field.as_ref().map_or(0, |outer| outer.$list.len())
    };
    (@add $description:ident, $at:ident, (of $field:ident $list:ident), $part:ident) => {
        $description.$field.as_mut().is_some_and(|outer| outer.$list.push($part::default()).is_ok())
    };

    (@get $description:ident, $at:ident, (in $field:ident $list:ident)) => {
        $description.$field.get($at[0]).and_then(|outer| outer.$list.get($at[1]))
    };
    (@mut $description:ident, $at:ident, (in $field:ident $list:ident)) => {
        $description.$field.get_mut($at[0]).and_then(|outer| outer.$list.get_mut($at[1]))
    };
    (@count $description:ident, $at:ident, (in $field:ident $list:ident)) => {
        $description.$field.get($at[0]).map_or(0, |outer| outer.$list.len())
    };
    (@add $description:ident, $at:ident, (in $field:ident $list:ident), $part:ident) => {
        $description.$field.get_mut($at[0]).is_some_and(|outer| outer.$list.push($part::default()).is_ok())
    };
}

pub(super) use {inputs, names, option, reach, stated};

//! The burner file: its text becomes a description, with the place of every field.

pub mod begin;
pub mod blank;
pub mod burner_file;
pub mod document;
pub mod error;
pub mod measured;
pub mod node;
pub mod page;
pub mod schema;
pub mod typed;

pub use error::{FileError, Places, shorten};

#[cfg(test)]
mod tests {
    use std::format;

    use crate::plant::description::Description;

    #[test]
    fn every_key_of_the_table_stands_on_every_page_made_of_it() {
        let (blank, page, typed) = (super::blank::blank(), super::page::inputs_page(), super::typed::typed_module());
        let schema = super::schema::schema();
        for section in Description::SECTIONS {
            let mut properties = &schema["properties"];
            for part in [section.name, section.list].into_iter().filter(|part| !part.is_empty()) {
                let held = &properties[part];
                properties = if section.is_list() || held["items"].is_object() {
                    let items = &held["items"]["properties"];
                    if items.is_object() { items } else { &held["properties"] }
                } else {
                    &held["properties"]
                };
            }
            for row in section.rows {
                let key = row.key;
                // An offered key of a list stands in the list's remark alone.
                let shown = [format!("{key} = "), format!(" {key}: ")];
                assert!(shown.iter().any(|shown| blank.contains(shown)), "{key}");
                assert!(page.contains(&format!("| `{key}` |")), "{key}");
                assert!(typed.contains(&format!("\n    {key}: ")), "{key}");
                assert!(properties[key].is_object(), "{}.{}", section.name, row.place);
            }
        }
        for row in Description::QUESTIONS.iter().flat_map(|section| section.rows) {
            assert!(page.contains(&format!("| `{}` |", row.key)), "{}", row.key);
        }
    }
}

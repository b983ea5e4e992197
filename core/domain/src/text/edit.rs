//! Changing a text of TOML in place: what is not changed stays as it was written, with its comments.
//!
//! `toml_edit` keeps how a file is written, and changes it; it stops at the first thing that is wrong
//! and says so in a sentence. [`super::read`] keeps the place of every value, tells each fault apart
//! and goes on to the next, and can't write. So what is read as a gym or a plan is read by that one
//! alone, after every change too; this one knows no format and says nothing to a person.

use toml_edit::{Array, ArrayOfTables, DocumentMut, InlineTable, Item, Table, TableLike, Value};

/// Something to write.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Put {
    /// A text.
    Text(String),
    /// A whole number.
    Whole(i64),
    /// True or false.
    Flag(bool),
    /// A list in brackets.
    List(Vec<Put>),
    /// A table: in braces as a value, under a heading of its own where it is one more of a list.
    Table(Vec<(&'static str, Put)>),
}

/// Why a text could not be changed. It is what it was.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotEdited {
    /// It is not TOML.
    NotToml,
    /// It has no such place.
    NoPlace,
}

impl From<&str> for Put {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<String> for Put {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl Put {
    fn value(&self) -> Value {
        match self {
            Self::Text(text) => Value::from(text.as_str()),
            Self::Whole(whole) => Value::from(*whole),
            Self::Flag(flag) => Value::from(*flag),
            Self::List(items) => Value::Array(items.iter().map(Self::value).collect::<Array>()),
            Self::Table(keys) => {
                let keys = keys.iter().map(|(key, put)| (*key, put.value()));
                Value::InlineTable(keys.collect::<InlineTable>())
            }
        }
    }
}

/// Writes a value at a place: keys, and places in lists from 0, joined by points (`plate.2.pairs`).
/// A key that is not there yet comes last in its table; a table on the way to it is made.
///
/// # Errors
/// [`NotEdited`].
pub fn put(text: &str, place: &str, value: &Put) -> Result<String, NotEdited> {
    changed(text, place, |parent, step| {
        let mut value = value.value();
        match parent {
            Node::Table(table) => match table.get_mut(step) {
                Some(Item::Value(was)) => {
                    *value.decor_mut() = was.decor().clone();
                    *was = value;
                }
                Some(item @ Item::None) => *item = Item::Value(value),
                // A list of tables or a table under its own heading is no value to be replaced.
                Some(_) => return None,
                None => {
                    table.insert(step, Item::Value(value));
                }
            },
            Node::Array(array) => {
                let was = array.get_mut(step.parse().ok()?)?;
                *value.decor_mut() = was.decor().clone();
                *was = value;
            }
            Node::Tables(_) => return None,
        }
        Some(())
    })
}

/// Takes away what is at a place.
///
/// # Errors
/// [`NotEdited`].
pub fn remove(text: &str, place: &str) -> Result<String, NotEdited> {
    changed(text, place, |parent, step| match parent {
        Node::Table(table) => table.remove(step).map(|_| ()),
        Node::Array(array) => {
            let at = step.parse().ok().filter(|at| *at < array.len())?;
            array.remove(at);
            Some(())
        }
        Node::Tables(tables) => {
            let at = step.parse().ok().filter(|at| *at < tables.len())?;
            tables.remove(at);
            Some(())
        }
    })
}

/// Adds one more to the list at a place, last: a table under a heading of its own where the list is
/// one of those, or where there is none yet and a table is added; else a value in brackets.
///
/// # Errors
/// [`NotEdited`].
pub fn add(text: &str, place: &str, value: &Put) -> Result<String, NotEdited> {
    changed(text, place, |parent, step| {
        let item = match parent {
            Node::Table(table) => table.entry(step).or_insert_with(|| match value {
                Put::Table(_) => Item::ArrayOfTables(ArrayOfTables::new()),
                _ => Item::Value(Value::Array(Array::new())),
            }),
            Node::Array(array) => match array.get_mut(step.parse().ok()?)? {
                Value::Array(inner) => {
                    inner.push(value.value());
                    return Some(());
                }
                _ => return None,
            },
            Node::Tables(_) => return None,
        };
        match (item, value) {
            (Item::ArrayOfTables(tables), Put::Table(keys)) => {
                let mut table = Table::new();
                for (key, put) in keys {
                    table.insert(key, Item::Value(put.value()));
                }
                if !text.trim().is_empty() {
                    table.decor_mut().set_prefix("\n");
                }
                tables.push(table);
            }
            (Item::Value(Value::Array(array)), _) => array.push(value.value()),
            _ => return None,
        }
        Some(())
    })
}

/// One more of what is at a place of a list, last.
///
/// # Errors
/// [`NotEdited`].
pub fn again(text: &str, place: &str) -> Result<String, NotEdited> {
    changed(text, place, |parent, step| {
        let at: usize = step.parse().ok()?;
        match parent {
            Node::Array(array) => {
                let copy = array.get(at)?.clone();
                array.push(copy);
            }
            Node::Tables(tables) => {
                let mut copy = tables.get(at)?.clone();
                // It is written after the others, without the remarks above the one it is made of.
                place_all(&mut copy, None);
                copy.decor_mut().set_prefix("\n");
                tables.push(copy);
            }
            Node::Table(_) => return None,
        }
        Some(())
    })
}

/// Moves what is at a place so many places down its list; negative is up, and its ends are its ends.
///
/// # Errors
/// [`NotEdited`].
pub fn shift(text: &str, place: &str, by: i32) -> Result<String, NotEdited> {
    let to = |at: usize, count: usize| {
        let by = isize::try_from(by).unwrap_or(0);
        at.saturating_add_signed(by).min(count.saturating_sub(1))
    };
    changed(text, place, |parent, step| {
        let at: usize = step.parse().ok()?;
        match parent {
            Node::Array(array) => {
                let count = array.len();
                array.get(at)?;
                let moved = array.remove(at);
                array.insert_formatted(to(at, count), moved);
            }
            Node::Tables(tables) => {
                // Tables are written where they stood in the file: the places stay, what is in them
                // moves.
                let mut all: Vec<Table> = std::mem::take(tables).into_iter().collect();
                let places: Vec<Option<isize>> = all.iter().map(Table::position).collect();
                if at >= all.len() {
                    return None;
                }
                let moved = all.remove(at);
                all.insert(to(at, places.len()), moved);
                for (mut table, place) in all.into_iter().zip(places) {
                    place_all(&mut table, place);
                    tables.push(table);
                }
            }
            Node::Table(_) => return None,
        }
        Some(())
    })
}

/// Writes a table where another stood, and what is in it after it.
fn place_all(table: &mut Table, place: Option<isize>) {
    table.set_position(place);
    for (_, item) in table.iter_mut() {
        match item {
            Item::Table(inner) => place_all(inner, place),
            Item::ArrayOfTables(tables) => {
                tables.iter_mut().for_each(|inner| place_all(inner, place));
            }
            Item::Value(_) | Item::None => {}
        }
    }
}

/// A text of TOML, to be asked what stands at its places.
#[derive(Debug, Clone)]
pub struct Written(DocumentMut);

impl Written {
    /// Of a text. None where it is not TOML.
    pub fn of(text: &str) -> Option<Self> {
        text.parse().ok().map(Self)
    }

    /// The text or the value at a place, as it is written; a text without its quotes. None where
    /// there is none.
    pub fn said(&self, place: &str) -> Option<String> {
        Some(match self.at(place)?.as_value()? {
            Value::String(text) => text.value().clone(),
            value => value.clone().decorated("", "").to_string(),
        })
    }

    /// How many a list has; 0 where there is none.
    pub fn count(&self, place: &str) -> usize {
        match self.at(place) {
            Some(Item::ArrayOfTables(tables)) => tables.len(),
            Some(Item::Value(Value::Array(array))) => array.len(),
            _ => 0,
        }
    }

    /// The keys of a table, in their order; of none of them where there is no table. An empty place is
    /// the whole text.
    pub fn keys(&self, place: &str) -> Vec<String> {
        let item = if place.is_empty() { Some(self.0.as_item()) } else { self.at(place) };
        let table = item.and_then(Item::as_table_like);
        let keys = table.into_iter().flat_map(TableLike::iter);
        keys.map(|(key, _)| key.to_owned()).collect()
    }

    fn at(&self, place: &str) -> Option<&Item> {
        let mut here = self.0.as_item();
        for step in place.split('.') {
            here = if here.is_table_like() {
                here.get(step)?
            } else {
                here.get(step.parse::<usize>().ok()?)?
            };
        }
        Some(here)
    }
}

/// Something that has places in it.
enum Node<'a> {
    Table(&'a mut dyn TableLike),
    Array(&'a mut Array),
    Tables(&'a mut ArrayOfTables),
}

fn changed(
    text: &str,
    place: &str,
    change: impl FnOnce(Node<'_>, &str) -> Option<()>,
) -> Result<String, NotEdited> {
    let mut document: DocumentMut = text.parse().map_err(|_| NotEdited::NotToml)?;
    let (way, step) = place.rsplit_once('.').unwrap_or(("", place));
    let parent = node(document.as_table_mut(), way).ok_or(NotEdited::NoPlace)?;
    change(parent, step).ok_or(NotEdited::NoPlace)?;
    Ok(document.to_string())
}

/// What is at the end of a way from the root. A table that is missing on it is made.
fn node<'a>(root: &'a mut Table, way: &str) -> Option<Node<'a>> {
    let mut here = Node::Table(root);
    for step in way.split('.').filter(|step| !step.is_empty()) {
        here = match here {
            Node::Table(table) => {
                if !table.contains_key(step) {
                    table.insert(step, Item::Value(Value::InlineTable(InlineTable::new())));
                }
                of_item(table.get_mut(step)?)?
            }
            Node::Array(array) => of_value(array.get_mut(step.parse().ok()?)?)?,
            Node::Tables(tables) => Node::Table(tables.get_mut(step.parse().ok()?)?),
        };
    }
    Some(here)
}

fn of_item(item: &mut Item) -> Option<Node<'_>> {
    match item {
        Item::Table(table) => Some(Node::Table(table)),
        Item::ArrayOfTables(tables) => Some(Node::Tables(tables)),
        Item::Value(value) => of_value(value),
        Item::None => None,
    }
}

fn of_value(value: &mut Value) -> Option<Node<'_>> {
    match value {
        Value::Array(array) => Some(Node::Array(array)),
        Value::InlineTable(table) => Some(Node::Table(table)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const GYM: &str = "# ours\nname = \"Boathouse\" # by the water\nalso = [\"rack\"]\n\n\
                       # the big ones\n[[plate]]\nmass = \"20 kg\"\npairs = 2 # both red\n\n\
                       [[plate]]\nmass = \"10 kg\"\npairs = 1\n";

    #[test]
    fn what_is_not_changed_stays_as_it_was_written() {
        let changed = put(GYM, "plate.0.pairs", &Put::Whole(3)).unwrap();
        assert_eq!(changed, GYM.replace("pairs = 2 # both red", "pairs = 3 # both red"));
        let changed = put(GYM, "name", &"Cellar".into()).unwrap();
        assert_eq!(changed, GYM.replace("\"Boathouse\"", "\"Cellar\""));
        assert_eq!(put(&changed, "name", &"Boathouse".into()).unwrap(), GYM);
        let changed = add(GYM, "also", &"bench".into()).unwrap();
        assert_eq!(changed, GYM.replace("[\"rack\"]", "[\"rack\", \"bench\"]"));
        assert_eq!(remove(&changed, "also.1").unwrap(), GYM);
    }

    #[test]
    fn tables_come_go_and_move() {
        let plate = Put::Table(vec![("mass", "5 kg".into()), ("pairs", Put::Whole(1))]);
        let changed = add(GYM, "plate", &plate).unwrap();
        assert_eq!(changed, format!("{GYM}\n[[plate]]\nmass = \"5 kg\"\npairs = 1\n"));
        assert_eq!(remove(&changed, "plate.2").unwrap(), GYM);
        let bar = Put::Table(vec![("name", "Long bar".into())]);
        assert!(add("", "bar", &bar).unwrap().starts_with("[[bar]]\nname = \"Long bar\"\n"));
        let moved = shift(GYM, "plate.0", 1).unwrap();
        assert!(moved.find("10 kg").unwrap() < moved.find("# the big ones").unwrap(), "{moved}");
        let moved = Written::of(&moved).unwrap();
        assert_eq!(moved.said("plate.1.mass").as_deref(), Some("20 kg"));
    }

    #[test]
    fn one_more_of_the_same_comes_last_with_what_is_in_it() {
        let text = "[[session]]\nname = \"A\"\n\n[[session.exercise]]\nname = \"Plank\"\n\n[[session.\
                    exercise]]\nname = \"Dip\"\n\n[[session]]\nname = \"B\"\n";
        let twice = again(text, "session.0").unwrap();
        let written = Written::of(&twice).unwrap();
        assert_eq!(written.count("session"), 3, "{twice}");
        assert_eq!(written.said("session.2.name").as_deref(), Some("A"));
        assert_eq!(written.said("session.2.exercise.1.name").as_deref(), Some("Dip"));
        assert_eq!((written.count("session.0.exercise"), written.count("session.1")), (2, 0));
        assert!(twice.starts_with(text), "{twice}");
        assert_eq!(again(text, "session.2"), Err(NotEdited::NoPlace));
    }

    #[test]
    fn a_place_that_is_not_there_changes_nothing() {
        assert_eq!(put(GYM, "plate.7.pairs", &Put::Whole(1)), Err(NotEdited::NoPlace));
        assert_eq!(put(GYM, "plate.x", &Put::Whole(1)), Err(NotEdited::NoPlace));
        assert_eq!(put(GYM, "name.x", &Put::Whole(1)), Err(NotEdited::NoPlace));
        assert_eq!(remove(GYM, "plate.2"), Err(NotEdited::NoPlace));
        assert_eq!(remove(GYM, "bar"), Err(NotEdited::NoPlace));
        assert_eq!(put("name = ", "name", &Put::Whole(1)), Err(NotEdited::NotToml));
    }

    #[test]
    fn a_text_says_what_stands_at_its_places() {
        let gym = Written::of(GYM).unwrap();
        assert_eq!(gym.said("plate.0.pairs").as_deref(), Some("2"));
        assert_eq!(gym.said("also.0").as_deref(), Some("rack"));
        assert_eq!(gym.said("also").as_deref(), Some("[\"rack\"]"));
        for none in ["plate.0.single", "plate.2", "plate", "plate.x.pairs", "name.0", ""] {
            assert_eq!(gym.said(none), None, "{none}");
        }
        assert_eq!((gym.count("plate"), gym.count("also"), gym.count("bar")), (2, 1, 0));
        assert!(Written::of("name = ").is_none());
    }
}

//! What is chosen on the desk, in the order in which it was.

use std::sync::Arc;

use super::Row;

/// The ids of what is chosen; the first two are compared in this order.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Selection(Vec<String>);

impl Selection {
    /// From lines, as a setting holds it.
    #[must_use]
    pub fn of_written(written: &str) -> Selection {
        Selection(written.lines().map(str::to_owned).collect())
    }

    /// As such lines.
    #[must_use]
    pub fn written(&self) -> String {
        self.0.join("\n")
    }

    /// The ids.
    #[must_use]
    pub fn ids(&self) -> &[String] {
        &self.0
    }

    /// Whether one is chosen.
    #[must_use]
    pub fn has(&self, id: &str) -> bool {
        self.0.iter().any(|chosen| chosen == id)
    }

    /// Chooses one, or no more.
    pub fn toggle(&mut self, id: &str) {
        match self.0.iter().position(|chosen| chosen == id) {
            Some(place) => {
                self.0.remove(place);
            }
            None => self.0.push(id.to_owned()),
        }
    }

    /// Chooses exactly these.
    pub fn choose(&mut self, ids: Vec<String>) {
        self.0 = ids;
    }

    /// Chooses all that are shown, and no other.
    pub fn choose_all(&mut self, shown: &[Arc<Row>]) {
        self.0 = shown.iter().map(|row| row.id.clone()).collect();
    }

    /// Chooses the matches of a pool that count in its table, and no other. What is not shown belongs to the pool
    /// all the same, unless it was archived.
    pub fn choose_pool(&mut self, rows: &[Arc<Row>], pool: &str) {
        let of_pool = rows
            .iter()
            .filter(|row| row.group == pool && row.counts() && !row.archived);
        self.0 = of_pool.map(|row| row.id.clone()).collect();
    }

    /// Chooses nothing.
    pub fn clear(&mut self) {
        self.0.clear();
    }

    /// What is not on the desk any more cannot be chosen; whether anything was.
    pub fn forget_gone(&mut self, rows: &[Arc<Row>]) -> bool {
        let before = self.0.len();
        self.0.retain(|id| rows.iter().any(|row| row.id == *id));
        self.0.len() != before
    }

    /// The chosen rows, in the order of the choice.
    #[must_use]
    pub fn rows(&self, rows: &[Arc<Row>]) -> Vec<Arc<Row>> {
        let of = |id: &String| rows.iter().find(|row| row.id == *id).cloned();
        self.0.iter().filter_map(of).collect()
    }

    /// Both records that can be laid side by side, where exactly two matches are chosen.
    #[must_use]
    pub fn pair(&self, rows: &[Arc<Row>]) -> Option<(String, String)> {
        match &self.rows(rows)[..] {
            [first, second] if first.line.is_some() && second.line.is_some() => {
                Some((first.id.clone(), second.id.clone()))
            }
            _ => None,
        }
    }
}

//! The lessons of a package, each with a page of its own, so that a platform keeps the marks of each apart.

use downbeam::lesson::digest::sha256_hex;
use downbeam::lesson::file::Lesson;

/// Hexadecimal digits of a hash in names.
const HASH_DIGITS: usize = 16;

/// Lessons in their order.
pub(super) struct Course<'a> {
    /// What several are called together.
    pub(super) title: Option<&'a str>,
    pub(super) items: Vec<Item<'a>>,
}

/// A lesson of it.
pub(super) struct Item<'a> {
    pub(super) lesson: &'a Lesson,
    /// Path of its page.
    pub(super) page: String,
    /// Path of the lesson file that the page reads.
    pub(super) file: String,
    /// First digits of its hash.
    pub(super) hash: String,
}

impl<'a> Course<'a> {
    pub(super) fn of(lessons: &'a [Lesson], title: Option<&'a str>) -> Self {
        let one = lessons.len() == 1;
        let item = |lesson: &'a Lesson| Item {
            lesson,
            page: if one { "player.html".to_owned() } else { format!("lesson-{}.html", lesson.id) },
            file: if one { "lesson.json".to_owned() } else { format!("lesson-{}.json", lesson.id) },
            hash: lesson.hash()[..HASH_DIGITS].to_owned(),
        };
        Self { title, items: lessons.iter().map(item).collect() }
    }

    pub(super) fn is_one(&self) -> bool {
        self.items.len() == 1
    }

    /// An id and a hash of all that is in it: that of the lesson where there is one.
    pub(super) fn name(&self) -> (&str, String) {
        if let [one] = self.items.as_slice() {
            return (&one.lesson.id, one.hash.clone());
        }
        let all: Vec<String> = self.items.iter().map(|i| i.lesson.hash()).collect();
        ("course", sha256_hex(all.join(" ").as_bytes())[..HASH_DIGITS].to_owned())
    }
}

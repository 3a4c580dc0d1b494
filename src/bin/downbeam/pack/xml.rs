//! Text in XML.

/// Text as content or attribute value: what is markup becomes entities, what XML 1.0 does not allow (section 2.2) becomes a blank.
pub(super) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&apos;"),
            '\t' | '\n' | '\r' | ' '..='\u{D7FF}' | '\u{E000}'..='\u{FFFD}' | '\u{10000}'.. => out.push(c),
            _ => out.push(' '),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    #[test]
    fn markup_becomes_text() {
        assert_eq!(
            super::escaped("<b a='1'>&\"\u{1}\u{FFFF}é🦴"),
            "&lt;b a=&apos;1&apos;&gt;&amp;&quot;  é🦴"
        );
    }
}

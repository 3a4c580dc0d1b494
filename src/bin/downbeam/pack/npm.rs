//! A folder that a bundler's user installs from disk: the custom element with what it needs.

use super::files::Files;
use anyhow::bail;
use serde_json::json;

const ELEMENT: &str = "element/downbeam-view.js";

pub(super) fn package(www: &Files, licences: Files) -> anyhow::Result<Files> {
    if www.iter().all(|(path, _)| path != ELEMENT) {
        bail!("www/{ELEMENT} is not there: this version has no custom element to pack");
    }
    let mut files = www.needed_by(ELEMENT)?;
    // The engine is named by its glue; both come with their types, and so does whatever beside the element has them.
    for (path, bytes) in www.iter() {
        if path.starts_with("pkg/") || (path.starts_with("element/") && path.ends_with(".d.ts")) {
            files.put(path, bytes);
        }
    }
    files.add(licences);
    let typed = files.iter().any(|(path, _)| path == "element/downbeam-view.d.ts");
    let mut entry = serde_json::Map::new();
    if typed {
        entry.insert("types".to_owned(), json!("./element/downbeam-view.d.ts"));
    }
    entry.insert("default".to_owned(), json!(format!("./{ELEMENT}")));
    let package = json!({
        "name": "downbeam",
        "version": env!("CARGO_PKG_VERSION"),
        "description": env!("CARGO_PKG_DESCRIPTION"),
        "license": "MIT OR Apache-2.0",
        "type": "module",
        "exports": { ".": entry, "./pkg/*": "./pkg/*", "./package.json": "./package.json" },
        // Importing the element registers it.
        "sideEffects": [format!("./{ELEMENT}")],
    });
    files.put("package.json", serde_json::to_string_pretty(&package)? + "\n");
    files.put("README.md", README);
    Ok(files)
}

const README: &str = r#"# Downbeam, as a package

What a C-arm shows of a lumbar spine, as a custom element. A teaching model, not for clinical use.

```js
import 'downbeam';
```

```html
<downbeam-view level="L4" side="left"></downbeam-view>
```

The element finds its engine by `new URL('downbeam_bg.wasm', import.meta.url)`, which bundlers copy along. A page with a content security
policy needs `script-src 'self' 'wasm-unsafe-eval'`.
"#;

//! A folder that a bundler's user installs from disk: the custom element with what it needs.

use super::files::Files;
use anyhow::bail;

const ELEMENT: &str = "element/downbeam-view.js";
const TYPES: &str = "element/downbeam-view.d.ts";

pub(super) fn package(www: &Files, licences: Files) -> anyhow::Result<Files> {
    for wanted in [ELEMENT, TYPES] {
        if www.iter().all(|(path, _)| path != wanted) {
            bail!("www/{wanted} is not there: this version has no custom element to pack");
        }
    }
    let mut files = www.needed_by(ELEMENT)?;
    // The engine comes with its types, and so does whatever beside the element has them.
    for (path, bytes) in www.iter() {
        if path.starts_with("pkg/downbeam") || (path.starts_with("element/") && path.ends_with(".d.ts")) {
            files.put(path, bytes);
        }
    }
    files.add(licences);
    files.put("package.json", PACKAGE.replace("VERSION", env!("CARGO_PKG_VERSION")));
    files.put("README.md", README);
    Ok(files)
}

/// In this order: TypeScript takes the first condition that fits. Importing the element registers it, which is a side effect.
const PACKAGE: &str = r#"{
  "name": "downbeam",
  "version": "VERSION",
  "description": "What a C-arm shows of a lumbar spine, as a custom element; a teaching model, not for clinical use",
  "license": "MIT OR Apache-2.0",
  "type": "module",
  "exports": {
    ".": { "types": "./element/downbeam-view.d.ts", "default": "./element/downbeam-view.js" },
    "./pkg/*": "./pkg/*",
    "./package.json": "./package.json"
  },
  "sideEffects": ["./element/downbeam-view.js"]
}
"#;

const README: &str = r#"# Downbeam, as a package

What a C-arm shows of a lumbar spine, as a custom element. A teaching model, not for clinical use.

```js
import 'downbeam';
```

```html
<downbeam-view level="L4" side="left"></downbeam-view>
```

The element finds its engine by `new URL('downbeam_bg.wasm', import.meta.url)` and the same of
`downbeam_rest.wasm`, which bundlers copy along. A page with a content security policy needs `script-src 'self' 'wasm-unsafe-eval'`.
"#;

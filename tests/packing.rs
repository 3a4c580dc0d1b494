//! `downbeam pack` from outside, in a copy of the project whose engine is two small files, so that nothing has to be built.

use std::fs;
use std::io::{Cursor, Read};
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

#[path = "../src/bin/downbeam/player_page.rs"]
mod player_page;

const PLATFORMS: [&str; 3] = ["--scorm12", "--scorm2004", "--cmi5"];

/// A project to pack: the real page beside a stand-in for the engine. Only what the engine computes is not there.
fn project(name: &str) -> PathBuf {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("packing").join(name);
    let _ = fs::remove_dir_all(&folder);
    copy(&root.join("www"), &folder.join("www"));
    let _ = fs::remove_dir_all(folder.join("www/pkg"));
    for name in ["downbeam", "lessons", "practice"] {
        let glue = format!(
            "const engine = new URL('{name}_bg.wasm', import.meta.url);\nexport {{ engine as default }};\n"
        );
        write(&folder.join(format!("www/pkg/{name}.js")), &glue);
        write(&folder.join(format!("www/pkg/{name}_bg.wasm")), "\0asm\u{1}\0\0\0");
    }
    write(&folder.join("www/pkg/downbeam_rest.wasm"), "\0asm\u{1}\0\0\0");
    copy(&root.join("texts"), &folder.join("texts"));
    let texts = downbeam(&folder, &["texts", "--write"]);
    assert!(texts.status.success(), "{}", String::from_utf8_lossy(&texts.stderr));
    player_page::write(&folder.join("www")).unwrap();
    for name in [
        "LICENSE-APACHE",
        "LICENSE-MIT",
        "README.md",
        "CHANGELOG.md",
        "docs/page.png",
        "docs/moving.webp",
        "docs/views.png",
    ] {
        fs::create_dir_all(folder.join("docs")).unwrap();
        fs::copy(root.join(name), folder.join(name)).unwrap();
    }
    folder
}

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let path = entry.unwrap().path();
        let target = to.join(path.file_name().unwrap());
        if path.is_dir() { copy(&path, &target) } else { fs::copy(&path, &target).map(|_| ()).unwrap() }
    }
}

fn write(path: &Path, text: &str) {
    fs::create_dir_all(path.parent().unwrap()).unwrap();
    fs::write(path, text).unwrap();
}

fn pack(project: &Path, arguments: &[&str]) -> Output {
    downbeam(project, &[&["pack", "--no-build"], arguments].concat())
}

fn downbeam(project: &Path, arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_downbeam"))
        .args(arguments)
        .env("CARGO_MANIFEST_DIR", project)
        .current_dir(project)
        .output()
        .unwrap()
}

fn packed(project: &Path, arguments: &[&str]) {
    let output = pack(project, &[arguments, &["--force"]].concat());
    assert!(output.status.success(), "{arguments:?}: {}", String::from_utf8_lossy(&output.stderr));
}

/// What a zip holds, by name in its own order.
fn unzipped(path: &Path) -> Vec<(String, Vec<u8>)> {
    let mut archive = zip::ZipArchive::new(Cursor::new(fs::read(path).unwrap())).unwrap();
    (0..archive.len())
        .map(|i| {
            let mut file = archive.by_index(i).unwrap();
            let mut bytes = Vec::new();
            file.read_to_end(&mut bytes).unwrap();
            (file.name().unwrap().into_owned(), bytes)
        })
        .collect()
}

fn text(files: &[(String, Vec<u8>)], name: &str) -> String {
    let (_, bytes) = files.iter().find(|(n, _)| n == name).unwrap_or_else(|| panic!("no {name}"));
    String::from_utf8(bytes.clone()).unwrap()
}

#[test]
fn wrong_use_is_one_sentence() {
    let project = project("wrong");
    fs::create_dir_all(project.join("full")).unwrap();
    write(&project.join("full/x"), "x");
    write(&project.join("bad.json"), "{\"format\":1,\"id\":\"A\"}");
    for (arguments, code, said) in [
        (vec!["--out", "x"], 2, "pack wants to know what to make: allowed are --site, --single, --scorm12"),
        (vec!["--site"], 2, "pack wants --out"),
        (vec!["--scorm12", "--out", "x.zip"], 2, "--scorm12 carries a lesson: say which with --lesson FILE"),
        (vec!["--cmi5", "--scorm12", "--out", "x"], 2, "one form at a time"),
        (vec!["--npm", "--lesson", "www/lessons/true-ap.json", "--out", "x"], 2, "--npm carries all lessons"),
        (vec!["--cmi5", "--lrs", "https://x", "--out", "x"], 2, "--lrs is for --site"),
        (vec!["--site", "--lrs", "https://x/y; script-src *", "--out", "x"], 2, "--lrs wants an origin"),
        (vec!["--turbo", "--out", "x"], 2, "unknown option '--turbo' of pack"),
        (vec!["--scorm12", "--lesson", "bad.json", "--out", "x.zip"], 1, "cannot use bad.json"),
        (vec!["--scorm12", "--lesson", "none.json", "--out", "x.zip"], 1, "none.json"),
        (vec!["--scorm12", "--lesson", "www/lessons", "--out", "x.zip"], 2, "wants a title"),
        (
            vec!["--single", "--lesson", "www/lessons", "--out", "x.html"],
            2,
            "--single opens one lesson, not 17",
        ),
        (
            vec![
                "--cmi5",
                "--lesson",
                "www/lessons",
                "--lesson",
                "www/lessons/true-ap.json",
                "--title",
                "T",
                "--out",
                "x",
            ],
            1,
            "lesson 'true-ap' again",
        ),
        (
            vec!["--cmi5", "--lesson", "www/lessons/true-ap.json", "--title", "T", "--out", "x"],
            2,
            "--title is for a course",
        ),
        (
            vec!["--cmi5", "--lesson", "www/lessons", "--title", "a\u{7}b", "--out", "x"],
            2,
            "one line of text",
        ),
        (vec!["--site", "--out", "full"], 1, "full is not empty"),
        (vec!["--single", "--out", "full"], 1, "full is a folder"),
    ] {
        let output = pack(&project, &arguments);
        let error = String::from_utf8_lossy(&output.stderr).into_owned();
        assert_eq!(output.status.code(), Some(code), "{arguments:?}: {error}");
        assert!(error.contains(said), "{arguments:?}: {error}");
        assert_eq!(error.lines().count(), 1, "{error}");
    }
    fs::remove_file(project.join("www/pkg/downbeam_bg.wasm")).unwrap();
    let output = pack(&project, &["--site", "--out", "x"]);
    assert!(String::from_utf8_lossy(&output.stderr).contains("has not been built"));
}

#[test]
fn the_same_input_gives_the_same_bytes() {
    let project = project("same");
    let lesson = "www/lessons/few-pictures.json";
    for form in PLATFORMS.into_iter().chain(["--single"]) {
        let out = |n: u8| format!("{n}{form}.out");
        for n in [1, 2] {
            packed(&project, &[form, "--lesson", lesson, "--out", &out(n)]);
            // Another time of the files changes nothing.
            for name in ["index.html", "player.html"] {
                let path = project.join("www").join(name);
                write(&path, &fs::read_to_string(&path).unwrap());
            }
        }
        assert_eq!(
            fs::read(project.join(out(1))).unwrap(),
            fs::read(project.join(out(2))).unwrap(),
            "{form}"
        );
    }
}

#[test]
fn a_package_holds_what_its_page_needs_and_no_more() {
    let project = project("needed");
    for form in PLATFORMS {
        packed(&project, &[form, "--lesson", "www/lessons/few-pictures.json", "--out", "p.zip"]);
        let files = unzipped(&project.join("p.zip"));
        let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
        let name = form.trim_start_matches("--");
        for wanted in [
            "player.html",
            "lesson.json",
            "first.js",
            "later.js",
            "style/first.css",
            "pkg/texts/de/page.js",
            "pkg/downbeam_bg.wasm",
            "pkg/downbeam_rest.wasm",
            "LICENSE-MIT",
        ] {
            assert!(names.contains(&wanted), "{form} has no {wanted}");
        }
        for inside in ["'page/begin.js'(", "'page/main.js'(", "'pkg/texts/en/page.js'("] {
            assert!(text(&files, "first.js").contains(inside), "{form} begins without {inside}");
        }
        for inside in ["'injection/injection.js'(", "'delivery/scorm12.js'(", "'delivery/cmi5.js'("] {
            assert!(text(&files, "later.js").contains(inside), "{form} has no {inside}");
        }
        for unwanted in [
            "service-worker.js",
            "page/begin.js",
            "delivery/scorm12.js",
            "style/tokens.css",
            "index.html",
            "check.html",
            "model.html",
            "model.json",
            "bench.html",
            "page/bench.js",
        ] {
            assert!(!names.contains(&unwanted), "{form} has {unwanted}");
        }
        assert!(names.iter().all(|n| !n.ends_with(".d.ts") && !n.starts_with("lessons/")));
        assert!(
            text(&files, "player.html")
                .contains(&format!("<meta name=\"downbeam-delivery\" content=\"{name}\">"))
        );
        let lesson = text(&files, "lesson.json");
        assert_eq!(lesson, downbeam::lesson::file::Lesson::from_json(&lesson).unwrap().to_json());
        if form != "--cmi5" {
            let manifest = text(&files, "imsmanifest.xml");
            for name in names.iter().filter(|n| **n != "imsmanifest.xml") {
                assert!(
                    manifest.contains(&format!("<file href=\"{name}\"/>")),
                    "{name} is not in the manifest"
                );
            }
        }
    }
    packed(&project, &["--scorm12", "--lesson", "www/lessons/few-pictures.json", "--out", "p.zip"]);
    assert!(text(&unzipped(&project.join("p.zip")), "imsmanifest.xml").contains("<adlcp:masteryscore>75<"));
    assert!(!text(&unzipped(&project.join("p.zip")), "player.html").contains("connect-src 'self' https:"));
}

#[test]
fn a_course_has_a_page_a_lesson_and_the_rest_once() {
    let project = project("course");
    let lessons = ["true-ap", "lateral-view", "few-pictures"];
    let files = lessons.map(|id| format!("www/lessons/{id}.json"));
    let mut arguments = vec!["--title", "Views & <injections>", "--out", "c.zip"];
    arguments.extend(files.iter().flat_map(|f| ["--lesson", f.as_str()]));
    for form in PLATFORMS {
        packed(&project, &[&[form], arguments.as_slice()].concat());
        let files = unzipped(&project.join("c.zip"));
        let names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
        assert!(!names.contains(&"player.html") && !names.contains(&"lesson.json"), "{form}");
        assert_eq!(names.iter().filter(|n| n.ends_with("downbeam_bg.wasm")).count(), 1);
        let table = text(&files, if form == "--cmi5" { "cmi5.xml" } else { "imsmanifest.xml" });
        assert!(table.contains("Views &amp; &lt;injections&gt;"), "{form}");
        let mut before = 0;
        for id in lessons {
            let page = format!("lesson-{id}.html");
            let own = format!("<meta name=\"downbeam-lesson\" content=\"lesson-{id}.json\">");
            assert!(text(&files, &page).contains(&own), "{form}: {page}");
            let lesson = text(&files, &format!("lesson-{id}.json"));
            assert_eq!(downbeam::lesson::file::Lesson::from_json(&lesson).unwrap().id, id);
            let at = table.find(&page).unwrap_or_else(|| panic!("{form}: the table has no {page}"));
            assert!(at > before, "{form}: in the order given");
            before = at;
        }
        // No lesson's hash stands for the whole course.
        let whole = if form == "--cmi5" { "urn:downbeam:course:course:" } else { "downbeam-course-" };
        assert!(table.contains(whole), "{form}");
    }
}

#[test]
fn markup_in_a_lesson_is_text_in_the_table_of_contents() {
    let project = project("markup");
    let lesson = fs::read_to_string(project.join("www/lessons/true-ap.json")).unwrap();
    let title = "</title><x y=\\\"1\\\">&amp; & 'q' ]]>";
    let mut value: serde_json::Value = serde_json::from_str(&lesson).unwrap();
    value["title"]["en"] = serde_json::from_str(&format!("\"{title}\"")).unwrap();
    write(&project.join("m.json"), &value.to_string());
    for form in PLATFORMS {
        packed(&project, &[form, "--lesson", "m.json", "--out", "m.zip"]);
        let files = unzipped(&project.join("m.zip"));
        let xml = text(&files, if form == "--cmi5" { "cmi5.xml" } else { "imsmanifest.xml" });
        assert!(
            xml.contains("&lt;/title&gt;&lt;x y=&quot;1&quot;&gt;&amp;amp; &amp; &apos;q&apos; ]]&gt;"),
            "{xml}"
        );
        assert!(!xml.contains("<x y="));
    }
}

#[test]
fn one_file_brings_everything_and_fetches_nothing() {
    let project = project("single");
    packed(&project, &["--single", "--out", "d/one.html"]);
    let html = fs::read_to_string(project.join("d/one.html")).unwrap();
    for gone in [
        "type=\"module\"",
        "rel=\"stylesheet\"",
        "modulepreload",
        "src=\"page/begin.js\"",
        "src=\"page/needed.js\"",
        "href=\"mark.svg\"",
        "import.meta",
        "connect-src",
    ] {
        assert!(!html.contains(gone), "{gone}");
    }
    for there in [
        "script-src 'sha256-",
        "style-src 'sha256-",
        "'pkg/downbeam_bg.wasm': ['application/wasm', 'AGFzbQEAAAA='",
        "'lessons/index.json'",
        "need('page/begin.js')",
    ] {
        assert!(html.contains(there), "{there}");
    }
    // What an old browser is told stands before what it cannot read.
    assert_eq!(html.matches("</script").count(), 2);
    assert!(html.find("externref").unwrap() < html.find("need('page/begin.js')").unwrap());
}

#[test]
fn a_site_has_all_and_a_worker_that_knows_it() {
    let project = project("site");
    packed(&project, &["--site", "--lrs", "https://lrs.example.org", "--out", "s"]);
    let site = project.join("s");
    for name in [
        "index.html",
        "player.html",
        "lessons/index.json",
        "README.md",
        "docs/page.png",
        "LICENSE-APACHE",
        "first.js",
        "later.js",
        "style/first.css",
        // What other pages and the element need stays by itself.
        "base/dom.js",
        "element/downbeam-view.js",
        "teach/check.js",
        "style/tokens.css",
    ] {
        assert!(site.join(name).is_file(), "{name}");
    }
    for name in ["bench.html", "page/main.js", "injection/injection.js"] {
        assert!(!site.join(name).exists(), "{name}");
    }
    let html = fs::read_to_string(site.join("index.html")).unwrap();
    assert!(!html.contains("modulepreload") && html.contains("<script type=\"module\" src=\"first.js\">"));
    // The copies are the files.
    for name in ["index.html", "first.js", "later.js", "style/first.css", "lessons/index.json"] {
        let whole = fs::read(site.join(name)).unwrap();
        let (mut gz, mut br) = (Vec::new(), Vec::new());
        flate2::read::GzDecoder::new(&fs::read(site.join(format!("{name}.gz"))).unwrap()[..])
            .read_to_end(&mut gz)
            .unwrap();
        brotli::BrotliDecompress(&mut &fs::read(site.join(format!("{name}.br"))).unwrap()[..], &mut br)
            .unwrap();
        assert!(gz == whole && br == whole, "{name}");
    }
    for page in ["index.html", "player.html"] {
        assert!(
            fs::read_to_string(site.join(page))
                .unwrap()
                .contains("connect-src 'self' https://lrs.example.org;")
        );
    }
    let worker = fs::read_to_string(site.join("service-worker.js")).unwrap();
    assert!(worker.contains("  'pkg/downbeam_bg.wasm',\n") && worker.contains("  'first.js',\n"));
    assert!(!worker.contains(".br'") && !worker.contains(".gz'"));
    let version = |worker: &str| worker.split("const VERSION = '").nth(1).unwrap()[..16].to_owned();
    write(
        &project.join("www/state/start.js"),
        &(fs::read_to_string(project.join("www/state/start.js")).unwrap() + "export const changed = true;\n"),
    );
    packed(&project, &["--site", "--lrs", "https://lrs.example.org", "--out", "t"]);
    let other = fs::read_to_string(project.join("t/service-worker.js")).unwrap();
    assert_ne!(version(&worker), version(&other), "other files are another version");
}

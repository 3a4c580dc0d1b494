//! Films of practice questions as PNG files, with what is drawn over them, to look at: kind by kind, before and after the answer.
//!
//! `cargo run --release --example practice_films -- FOLDER [STAGE] [SEED] [KIND]`

use downbeam::anatomy::names::{Level, Side};
use downbeam::anatomy::patient::Patient;
use downbeam::practice::ask::ask;
use downbeam::practice::film::{Films, Moment};
use downbeam::practice::kind::Kind;
use downbeam::practice::overlay::marks;
use downbeam::view::criteria::Target;
use std::io::BufWriter;
use std::path::Path;

const PIXELS: usize = 512;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let given: Vec<String> = std::env::args().skip(1).collect();
    let folder = Path::new(given.first().ok_or("a folder is wanted")?);
    let number = |i: usize| given.get(i).and_then(|text| text.parse::<u64>().ok()).unwrap_or(0);
    let (stage, seed) = (number(1) as u8, number(2));
    std::fs::create_dir_all(folder)?;
    let mut films = Films::new(PIXELS);
    for kind in Kind::ALL {
        if given.get(3).is_some_and(|name| name != kind.name()) {
            continue;
        }
        let target =
            Target { level: Level::L4, side: if seed.is_multiple_of(2) { Side::Left } else { Side::Right } };
        let Some(q) = ask(kind, stage, target, seed) else {
            println!("{}: none", kind.name());
            continue;
        };
        println!("{} on {}, {} {}", kind.name(), q.spec.title(), target.level, target.side);
        println!(
            "  {:?} at {:?}\n  {:?}\n  right: {:?}; {:?}\n  {:?}",
            q.asked,
            q.view,
            q.choices,
            q.right(),
            q.margin,
            q.reason
        );
        let patient = Patient::new(&q.spec);
        let moments = [
            ("asked", Moment::Asked, q.view),
            ("later", Moment::Later, q.view),
            ("truth", Moment::Answered, q.truth),
        ];
        for (name, moment, at) in moments {
            let grey = films.draw(&patient, &q, at, moment, true);
            let mut rgb: Vec<u8> = grey.iter().flat_map(|g| [*g; 3]).collect();
            for mark in marks(&q, &patient.interior, at, moment == Moment::Answered) {
                for pair in mark.line.windows(2) {
                    (0..=200).for_each(|i| put(&mut rgb, lerp(pair[0], pair[1], f64::from(i) / 200.0), 1));
                }
                if let [one] = mark.line[..] {
                    put(&mut rgb, one, 4);
                }
            }
            save(&folder.join(format!("{}-{name}.png", kind.name())), &rgb)?;
        }
    }
    Ok(())
}

fn lerp(a: [f64; 2], b: [f64; 2], t: f64) -> [f64; 2] {
    [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]
}

fn put(rgb: &mut [u8], [u, v]: [f64; 2], half: i64) {
    let (x, y) = ((u / 0.4 + 256.0) as i64, (256.0 - v / 0.4) as i64);
    for (dx, dy) in (-half..half).flat_map(|dx| (-half..half).map(move |dy| (dx, dy))) {
        let (x, y) = (x + dx, y + dy);
        if (0..PIXELS as i64).contains(&x) && (0..PIXELS as i64).contains(&y) {
            let at = 3 * (y as usize * PIXELS + x as usize);
            rgb[at..at + 3].copy_from_slice(&[255, 170, 60]);
        }
    }
}

fn save(path: &Path, rgb: &[u8]) -> Result<(), Box<dyn std::error::Error>> {
    let mut encoder =
        png::Encoder::new(BufWriter::new(std::fs::File::create(path)?), PIXELS as u32, PIXELS as u32);
    encoder.set_color(png::ColorType::Rgb);
    encoder.write_header()?.write_image_data(rgb)?;
    Ok(())
}

//! What reaches a backend: a recording one sees every call inside its surface and at every scale alike; a bitmap shows the colours.
use crate::charts_demo::{pictures, shift, three};
use crate::charts_laws::height;
use crate::charts_parts::register_faces;
use layshaft::chart::{DARK, LIGHT, Picture, draw, face::Face, scene::Scene};
use plotters::backend::BitMapBackend;
use plotters::drawing::IntoDrawingArea;
use plotters_backend::{BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingBackend, DrawingErrorKind};
use std::cell::RefCell;
use std::convert::Infallible;
use std::rc::Rc;

/// What a backend was asked to do.
#[derive(Clone, Debug, Default)]
struct Seen {
    places: Vec<BackendCoord>,
    texts: Vec<(String, f64, BackendCoord)>,
    presented: usize,
}

struct Recorder {
    size: (u32, u32),
    seen: Rc<RefCell<Seen>>,
}

type Drawn = Result<(), DrawingErrorKind<Infallible>>;

impl DrawingBackend for Recorder {
    type ErrorType = Infallible;

    fn get_size(&self) -> (u32, u32) {
        self.size
    }

    fn ensure_prepared(&mut self) -> Drawn {
        Ok(())
    }

    fn present(&mut self) -> Drawn {
        self.seen.borrow_mut().presented += 1;
        Ok(())
    }

    fn draw_pixel(&mut self, place: BackendCoord, _: BackendColor) -> Drawn {
        self.seen.borrow_mut().places.push(place);
        Ok(())
    }

    fn draw_line<S: BackendStyle>(&mut self, from: BackendCoord, to: BackendCoord, _: &S) -> Drawn {
        self.seen.borrow_mut().places.extend([from, to]);
        Ok(())
    }

    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(&mut self, path: I, style: &S) -> Drawn {
        assert!(style.stroke_width() > 0);
        self.seen.borrow_mut().places.extend(path);
        Ok(())
    }

    fn fill_polygon<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(&mut self, corners: I, _: &S) -> Drawn {
        self.seen.borrow_mut().places.extend(corners);
        Ok(())
    }

    fn draw_circle<S: BackendStyle>(&mut self, (x, y): BackendCoord, radius: u32, _: &S, _: bool) -> Drawn {
        let radius = i32::try_from(radius).unwrap();
        self.seen.borrow_mut().places.extend([(x - radius, y - radius), (x + radius, y + radius)]);
        Ok(())
    }

    fn draw_text<S: BackendTextStyle>(&mut self, words: &str, style: &S, place: BackendCoord) -> Drawn {
        self.seen.borrow_mut().texts.push((words.to_owned(), style.size(), place));
        Ok(())
    }
}

fn seen(picture: &dyn Picture, width: u32, units: u32) -> Seen {
    let (seen, size) = (Rc::new(RefCell::new(Seen::default())), (width * units, height(picture, width) * units));
    let area = Recorder { size, seen: Rc::clone(&seen) }.into_drawing_area();
    draw(picture, &LIGHT, &area, f64::from(units)).unwrap();
    drop(area);
    seen.take()
}

#[test]
fn a_backend_is_never_asked_to_draw_outside_its_surface() {
    for (name, picture) in pictures() {
        for (width, units) in [(320, 1), (360, 3), (1180, 4), (1400, 10)] {
            let (seen, limit) = (seen(picture.as_ref(), width, units), (width * units, height(picture.as_ref(), width) * units));
            let (right, foot) = (i32::try_from(limit.0).unwrap(), i32::try_from(limit.1).unwrap());
            let outside = seen.places.iter().find(|(x, y)| *x < 0 || *y < 0 || *x > right || *y > foot);
            assert_eq!(outside, None, "{name} at {width}, {units} units");
            assert!(seen.presented > 0, "{name} is presented");
        }
    }
}

/// plotters' sizes are 1.24 times the CSS size; a text is never scaled otherwise than by the units.
const PLOTTERS_SIZE: f64 = 1.24;

#[test]
fn texts_keep_their_css_size_at_every_number_of_units() {
    let sizes = |scene: &Scene| scene.texts().map(|text| (text.words.clone(), text.size_px)).collect::<Vec<_>>();
    for (name, picture) in pictures() {
        for units in [1, 2, 8] {
            let scene = picture.scene(&LIGHT, (360.0, f64::from(height(picture.as_ref(), 360))));
            let drawn: Vec<_> = seen(picture.as_ref(), 360, units)
                .texts
                .into_iter()
                .map(|(words, size, _)| (words, size / PLOTTERS_SIZE / f64::from(units)))
                .collect();
            for ((words, size), (drawn_words, drawn_size)) in sizes(&scene).into_iter().zip(drawn) {
                assert_eq!(words, drawn_words, "{name}");
                assert!((size - drawn_size).abs() < 1e-9, "{name}: {words} is {drawn_size} px, not {size}");
            }
        }
    }
}

#[test]
fn no_text_is_smaller_than_a_hand_at_the_bench_can_read() {
    for (name, picture) in pictures() {
        let scene = picture.scene(&LIGHT, (320.0, f64::from(height(picture.as_ref(), 320))));
        assert!(scene.texts().all(|text| text.size_px >= 13.0), "{name}");
    }
}

/// A picture as red, green and blue bytes, two to the CSS pixel.
fn bitmap(picture: &dyn Picture, theme: &layshaft::chart::Theme, width: u32) -> (Vec<u8>, (u32, u32)) {
    register_faces();
    let size = (width * 2, height(picture, width) * 2);
    let sheet = [theme.sheet.0, theme.sheet.1, theme.sheet.2];
    let mut bytes = sheet.repeat(usize::try_from(size.0 * size.1).unwrap());
    let area = BitMapBackend::with_buffer(&mut bytes, size).into_drawing_area();
    draw(picture, theme, &area, 2.0).unwrap();
    drop(area);
    (bytes, size)
}

#[test]
fn a_bitmap_shows_every_setup_in_its_colour() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("charts");
    std::fs::create_dir_all(&folder).unwrap();
    for (theme, word) in [(&LIGHT, "light"), (&DARK, "dark")] {
        for width in [360, 1180] {
            let (bytes, (across, down)) = bitmap(&shift(&three(), None), theme, width);
            for colour in [theme.a, theme.b, theme.c, theme.ink] {
                let count = bytes.chunks(3).filter(|pixel| *pixel == [colour.0, colour.1, colour.2]).count();
                assert!(count > 200, "{} is seen {count} times at {width} px, {word}", colour.css());
            }
            let mut file = format!("P6 {across} {down} 255\n").into_bytes();
            file.extend(bytes);
            std::fs::write(folder.join(format!("shift-3-{width}-{word}.ppm")), file).unwrap();
        }
    }
}

/// The bitmap's pixel of a place.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "places in a picture are small and not below zero")]
fn pixel(place: f64) -> usize {
    (place * 2.0) as usize
}

/// Letters are drawn where the scene says they stand: inside their box, which is not left empty.
#[test]
fn a_bitmap_puts_letters_inside_their_boxes() {
    let picture = shift(&three(), None);
    let (bytes, (across, _)) = bitmap(&picture, &LIGHT, 1180);
    let scene = picture.scene(&LIGHT, (1180.0, f64::from(height(&picture, 1180))));
    let row = usize::try_from(across).unwrap() * 3;
    for text in scene.texts().filter(|text| text.face == Face::Strong) {
        let bounds = text.bounds();
        let rows = pixel(bounds.top)..pixel(bounds.bottom);
        let columns = pixel(bounds.left) * 3..pixel(bounds.right) * 3;
        let full = [text.colour.0, text.colour.1, text.colour.2];
        let is_inked = |y: &usize| bytes[y * row..][columns.clone()].chunks(3).any(|dot| dot == full);
        let inked = u32::try_from(rows.filter(is_inked).count()).unwrap();
        // Capitals and digits reach 0.7 of the size: at two pixels to the CSS pixel, rows enough for most of that.
        let expected = 2.0 * 0.55 * text.size_px;
        assert!(f64::from(inked) >= expected, "{:?} has ink on {inked} rows of its box, {expected} expected", text.words);
    }
}

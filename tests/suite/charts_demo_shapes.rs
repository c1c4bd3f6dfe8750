//! Demo shapes: teeth with jaws over them, a single tooth, one wide and flat; invented.
use crate::charts_demo_more::named;
use layshaft::chart::{
    Picture,
    palette::Hue,
    shapes::{Body, Guide, Laid, Shapes},
};

fn shapes(outline: &[(f64, f64)], wide: f64) -> Shapes {
    let (low, high) = (outline.iter().map(|(_, y)| *y).fold(f64::INFINITY, f64::min), outline.iter().map(|(_, y)| *y).fold(0.0, f64::max));
    let guide = |name: &str, y: f64| Guide { name: name.to_owned(), points: vec![(-wide, y), (wide, y)] };
    let middle = f64::midpoint(low, high);
    Shapes {
        title: "Teeth to scale, with the jaws of the span".to_owned(),
        unit: "in".to_owned(),
        bodies: vec![Body { name: "gear".to_owned(), hue: Hue::Dye, outline: outline.to_vec() }],
        guides: vec![guide("tip 3.1200", high), guide("pitch 2.9190", middle), guide("root 2.7454", low)],
        laid: vec![Laid { points: vec![(-wide / 2.0, middle), (wide / 2.0, middle)] }],
        contacts: vec![(-wide / 2.0, middle), (wide / 2.0, middle)],
        own_size: None,
        turning: None,
        says: vec!["Jaws over 5 teeth: 1.1652 in. Blue is where they touch.".to_owned()],
    }
}

pub(crate) fn pictures() -> Vec<(String, Box<dyn Picture>)> {
    let tooth = |x: f64| [(x - 0.2, 1.3), (x - 0.1, 1.56), (x + 0.1, 1.56), (x + 0.2, 1.3)];
    let teeth: Vec<(f64, f64)> = [-1.2, -0.7, 0.0, 0.7, 1.2].into_iter().flat_map(tooth).chain([(1.4, 1.1), (-1.4, 1.1)]).collect();
    let flat: Vec<(f64, f64)> = vec![(-9.0, 1.0), (-8.0, 1.2), (8.0, 1.2), (9.0, 1.0)];
    vec![named("teeth-spanned", shapes(&teeth, 1.4)), named("teeth-one", shapes(&tooth(0.0), 0.3)), named("teeth-flat", shapes(&flat, 9.0))]
}

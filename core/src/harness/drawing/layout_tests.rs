//! Every template is drawn without two labels or boxes meeting, and no element is lost.

use super::*;
use crate::harness::templates::{TEMPLATES, template};

/// Whether two rectangles (left, top, width, height) share any space.
fn overlap(one: [f64; 4], other: [f64; 4]) -> bool {
    let ([ax, ay, aw, ah], [bx, by, bw, bh]) = (one, other);
    ax < bx + bw && bx < ax + aw && ay < by + bh && by < ay + ah
}

fn sound() -> impl Iterator<Item = (&'static str, Harness, Diagram)> {
    TEMPLATES.iter().map(|card| {
        let harness = template(card.id, 12.0).unwrap();
        let drawing = layout(&harness);
        (card.id, harness, drawing)
    })
}

#[test]
fn no_label_or_box_lies_on_another_and_all_fit_on_a_phone() {
    for (mark, _, drawing) in sound() {
        let boxes = drawing.boxes.iter().map(|part| (part.element.clone(), [part.x, part.y, part.width, part.height]));
        let labels = drawing.lines.iter().filter_map(|line| line.label.as_ref());
        let labels = labels.map(|label| (label.text.clone(), [label.x, label.y, label.width, label.height]));
        let all: Vec<(String, [f64; 4])> = boxes.chain(labels).collect();
        for (at, (one, space)) in all.iter().enumerate() {
            assert!(space[0] >= 0.0 && space[0] + space[2] <= LANES[0] + 1.0, "{mark}: {one} {space:?}");
            assert!(space[1] >= 0.0 && space[1] + space[3] <= drawing.earth_y, "{mark}: {one} {space:?}");
            for (other, others) in all.iter().skip(at + 1) {
                assert!(!overlap(*space, *others), "{mark}: {one} {space:?} on {other} {others:?}");
            }
        }
    }
}

#[test]
fn lines_run_straight_and_no_label_lies_on_a_line() {
    for (mark, _, drawing) in sound() {
        for line in &drawing.lines {
            for pair in line.corners.windows(2) {
                assert!(pair[0].x == pair[1].x || pair[0].y == pair[1].y, "{mark}: {:?}", line.corners);
                assert!(pair.iter().all(|spot| (0.0..=drawing.width).contains(&spot.x)), "{mark}: {:?}", line.corners);
            }
        }
        for label in drawing.lines.iter().filter_map(|line| line.label.as_ref()) {
            for line in &drawing.lines {
                for pair in line.corners.windows(2) {
                    let (x, y) = (pair[0].x.min(pair[1].x), pair[0].y.min(pair[1].y));
                    let (width, height) = ((pair[0].x - pair[1].x).abs(), (pair[0].y - pair[1].y).abs());
                    let space = [x - 0.1, y - 0.1, width + 0.2, height + 0.2];
                    assert!(
                        !overlap([label.x, label.y, label.width, label.height], space),
                        "{mark}: {label:?} {line:?}"
                    );
                }
            }
        }
    }
}

#[test]
fn every_element_is_drawn_once_as_a_box_or_in_a_line() {
    for (mark, harness, drawing) in sound() {
        for element in &harness.elements {
            let boxes = drawing.boxes.iter().filter(|part| part.element == element.id).count();
            let lines = drawing.lines.iter().filter(|line| line.elements.contains(&element.id)).count();
            assert!(boxes + lines >= 1, "{mark}: {} is lost", element.id);
            assert!(boxes <= 1 && (boxes == 0 || lines == 0), "{mark}: {}", element.id);
        }
        assert_eq!(drawing.floating, Vec::<String>::new(), "{mark}");
    }
}

#[test]
fn the_source_is_at_the_upper_left_and_layers_grow_to_the_right() {
    for (mark, harness, drawing) in sound() {
        let source = harness.element(&drawing.boxes[0].element).unwrap();
        assert!(source.component.is_source(), "{mark}");
        for one in &drawing.boxes[1..] {
            for other in &drawing.boxes[1..] {
                assert!(one.layer >= other.layer || one.x < other.x, "{mark}");
            }
        }
    }
}

#[test]
fn switches_side_by_side_hang_on_the_same_trunk_and_the_second_is_linked_to_the_first() {
    let drawing = layout(&template("stop-lamp", 12.0).unwrap());
    let part = |id: &str| drawing.boxes.iter().find(|part| part.element == id).unwrap();
    assert_eq!(part("brake.front").layer, part("brake.rear").layer);
    let links = drawing.lines.iter().filter(|line| line.kind == LineKind::Link).count();
    assert_eq!(links, 1);
}

#[test]
fn a_part_in_the_air_is_drawn_last_and_named() {
    let mut harness = template("horn", 12.0).unwrap();
    let mut stray = harness.element("horn").unwrap().clone();
    (stray.id, stray.from, stray.to) = ("stray".to_owned(), "a".to_owned(), "b".to_owned());
    harness.elements.push(stray);
    let drawing = layout(&harness);
    assert_eq!((drawing.floating, drawing.boxes.last().unwrap().element.as_str()), (vec!["stray".to_owned()], "stray"));
}

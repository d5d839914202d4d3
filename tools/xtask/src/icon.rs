//! Draws the icon at the sizes that phones ask for.
//!
//! `assets/icon.svg` is the one source. It keeps to what is read here: a ground (`rect`), and
//! strokes of one weight with round ends (`polyline`, `circle`).

use std::io::Write;

use crate::Outcome;

/// The side of the drawing's own square.
const SIDE: f32 = 512.0;

type Rgb = [u8; 3];

/// The drawing, read.
pub struct Icon {
    ground: Rgb,
    corner: f32,
    strokes: Vec<Stroke>,
    weight: f32,
}

struct Stroke {
    colour: Rgb,
    shape: Shape,
}

enum Shape {
    Line(Vec<[f32; 2]>),
    Ring { centre: [f32; 2], radius: f32 },
}

/// How the drawing sits in the picture.
enum Frame {
    /// Rounded corners, nothing around them.
    Rounded,
    /// The ground fills the square and the drawing is made smaller by this factor, because the
    /// phone cuts its own shape out of the picture.
    Full(f32),
}

impl Icon {
    /// Reads the drawing.
    pub fn read(svg: &str) -> Outcome<Icon> {
        let mut icon = Icon {
            ground: [0; 3],
            corner: 0.0,
            strokes: Vec::new(),
            weight: 0.0,
        };
        for element in svg.split('<').skip(1) {
            let name = element.split([' ', '>', '\n']).next().unwrap_or_default();
            let number = |key| attribute(element, key).and_then(|text| parse(&text));
            match name {
                "rect" => {
                    icon.ground = colour(&attribute(element, "fill")?)?;
                    icon.corner = number("rx")?;
                }
                "g" => icon.weight = number("stroke-width")?,
                "polyline" => {
                    let points = attribute(element, "points")?
                        .split_whitespace()
                        .map(|pair| {
                            let (x, y) = pair
                                .split_once(',')
                                .ok_or(format!("{pair:?} is not a point of the icon."))?;
                            Ok([parse(x)?, parse(y)?])
                        })
                        .collect::<Outcome<Vec<_>>>()?;
                    icon.strokes.push(Stroke {
                        colour: colour(&attribute(element, "stroke")?)?,
                        shape: Shape::Line(points),
                    });
                }
                "circle" => {
                    let shape = Shape::Ring {
                        centre: [number("cx")?, number("cy")?],
                        radius: number("r")?,
                    };
                    icon.strokes.push(Stroke {
                        colour: colour(&attribute(element, "stroke")?)?,
                        shape,
                    });
                }
                "svg" | "title" | "!--" | "/svg>" | "/g>" => {}
                _ if name.starts_with('/') => {}
                other => {
                    return Err(format!(
                        "assets/icon.svg holds <{other}>, which is not drawn."
                    ))
                }
            }
        }
        Ok(icon)
    }

    /// The pictures, each with its plain name.
    ///
    /// Sizes: 180 for the iOS home screen; 192 and 512 for an installable manifest; a maskable
    /// one keeps the drawing inside the middle circle of 80 % (W3C Web App Manifest, "icon masks
    /// and safe zone").
    pub fn pngs(&self) -> [(&'static str, Vec<u8>); 4] {
        [
            ("icon-180.png", self.png(180, &Frame::Full(0.9))),
            ("icon-192.png", self.png(192, &Frame::Rounded)),
            ("icon-512.png", self.png(512, &Frame::Rounded)),
            ("icon-maskable.png", self.png(512, &Frame::Full(0.8))),
        ]
    }

    fn png(&self, side: u32, frame: &Frame) -> Vec<u8> {
        let mut rows = Vec::with_capacity((side * (side * 4 + 1)) as usize);
        for y in 0..side {
            // Filter type 0: the row as it is.
            rows.push(0);
            for x in 0..side {
                rows.extend(self.pixel(x, y, side, frame));
            }
        }
        pack(side, &rows)
    }

    fn pixel(&self, x: u32, y: u32, side: u32, frame: &Frame) -> [u8; 4] {
        let pixel = SIDE / side as f32;
        let at = [(x as f32 + 0.5) * pixel, (y as f32 + 0.5) * pixel];
        let (factor, alpha) = match frame {
            Frame::Full(factor) => (*factor, 1.0),
            Frame::Rounded => (1.0, cover(self.outside(at), pixel)),
        };
        let place = at.map(|v| (v - SIDE / 2.0) / factor + SIDE / 2.0);
        let mut colour = self.ground.map(f32::from);
        for stroke in &self.strokes {
            let share = cover(
                stroke.shape.distance(place) - self.weight / 2.0,
                pixel / factor,
            );
            for (mine, theirs) in colour.iter_mut().zip(stroke.colour) {
                *mine += (f32::from(theirs) - *mine) * share;
            }
        }
        let [r, g, b] = colour.map(|v| v.round() as u8);
        [r, g, b, (alpha * 255.0).round() as u8]
    }

    /// Distance from the rounded ground, negative inside it.
    fn outside(&self, at: [f32; 2]) -> f32 {
        let [dx, dy] = at.map(|v| (v - SIDE / 2.0).abs() - (SIDE / 2.0 - self.corner));
        dx.max(0.0).hypot(dy.max(0.0)) + dx.max(dy).min(0.0) - self.corner
    }
}

impl Shape {
    fn distance(&self, at: [f32; 2]) -> f32 {
        match self {
            Shape::Ring { centre, radius } => {
                ((at[0] - centre[0]).hypot(at[1] - centre[1]) - radius).abs()
            }
            Shape::Line(points) => points
                .windows(2)
                .map(|ends| to_segment(at, ends[0], ends[1]))
                .fold(f32::INFINITY, f32::min),
        }
    }
}

fn to_segment(at: [f32; 2], from: [f32; 2], to: [f32; 2]) -> f32 {
    let along = [to[0] - from[0], to[1] - from[1]];
    let rel = [at[0] - from[0], at[1] - from[1]];
    let length = along[0]
        .mul_add(along[0], along[1] * along[1])
        .max(f32::EPSILON);
    let share = ((rel[0] * along[0] + rel[1] * along[1]) / length).clamp(0.0, 1.0);
    (rel[0] - share * along[0]).hypot(rel[1] - share * along[1])
}

/// How much of a pixel lies inside an edge at this distance.
fn cover(distance: f32, pixel: f32) -> f32 {
    (0.5 - distance / pixel).clamp(0.0, 1.0)
}

fn attribute(element: &str, key: &str) -> Outcome<String> {
    element
        .split_once(&format!(" {key}=\""))
        .and_then(|(_, rest)| rest.split_once('"'))
        .map(|(value, _)| value.to_owned())
        .ok_or(format!("assets/icon.svg lacks {key} in <{element}."))
}

fn parse(text: &str) -> Outcome<f32> {
    text.parse()
        .map_err(|_| format!("{text:?} in assets/icon.svg is not a number."))
}

fn colour(text: &str) -> Outcome<Rgb> {
    let part = |from: usize| {
        text.get(from..from + 2)
            .and_then(|two| u8::from_str_radix(two, 16).ok())
    };
    match (part(1), part(3), part(5)) {
        (Some(r), Some(g), Some(b)) if text.len() == 7 && text.starts_with('#') => Ok([r, g, b]),
        _ => Err(format!(
            "{text:?} in assets/icon.svg is not a colour of the form #123456."
        )),
    }
}

/// A PNG file (W3C PNG, third edition) of 8-bit RGBA rows.
fn pack(side: u32, rows: &[u8]) -> Vec<u8> {
    let mut packer = flate2::write::ZlibEncoder::new(Vec::new(), flate2::Compression::best());
    let packed = packer
        .write_all(rows)
        .and_then(|()| packer.finish())
        .expect("memory does not refuse bytes");
    let mut header = [side.to_be_bytes(), side.to_be_bytes()].concat();
    // Depth 8, colour type 6 (RGBA), and the only methods there are.
    header.extend([8, 6, 0, 0, 0]);
    let mut png = b"\x89PNG\r\n\x1a\n".to_vec();
    for (kind, data) in [
        (b"IHDR", &header),
        (b"IDAT", &packed),
        (b"IEND", &Vec::new()),
    ] {
        let mut sum = flate2::Crc::new();
        sum.update(kind);
        sum.update(data);
        png.extend(
            u32::try_from(data.len())
                .expect("an icon is small")
                .to_be_bytes(),
        );
        png.extend(kind);
        png.extend(data);
        png.extend(sum.sum().to_be_bytes());
    }
    png
}

#[cfg(test)]
mod tests {
    use super::{Frame, Icon};

    const DOT: &str = "<svg>\n<rect fill=\"#102030\" rx=\"100\"/>\n<g stroke-width=\"40\">\n\
        <polyline stroke=\"#ffffff\" points=\"100,256 400,256\"/></g></svg>";

    #[test]
    fn ground_stroke_and_corner_are_where_they_belong() {
        let icon = Icon::read(DOT).unwrap();
        assert_eq!(
            icon.pixel(32, 32, 64, &Frame::Rounded),
            [255, 255, 255, 255]
        );
        assert_eq!(icon.pixel(32, 10, 64, &Frame::Rounded), [16, 32, 48, 255]);
        assert_eq!(icon.pixel(0, 0, 64, &Frame::Rounded)[3], 0);
        assert_eq!(icon.pixel(0, 0, 64, &Frame::Full(0.8)), [16, 32, 48, 255]);
    }

    #[test]
    fn what_cannot_be_drawn_is_refused() {
        assert!(Icon::read("<svg><path d=\"M0 0\"/></svg>").is_err());
        assert!(Icon::read("<svg><rect fill=\"red\" rx=\"1\"/></svg>").is_err());
    }
}

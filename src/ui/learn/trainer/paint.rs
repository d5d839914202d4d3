//! The shapes of a picture on a canvas, in the colours of the page.

use device::{Brush, Canvas};
use learn::{gaze, picture, End, Look, Place, Point, Row, Scene, Seen, Shape, Tone, View};

/// A canvas with the colours of the page.
pub struct Painter {
    canvas: Canvas,
    colours: Colours,
}

struct Colours {
    floor: String,
    line: String,
    left: String,
    left_line: String,
    right: String,
    right_line: String,
    libero: String,
    paper: String,
    soft: String,
    antenna: String,
    ball: String,
    ball_edge: String,
    measure: String,
}

/// How much is seen from edge to edge, in degrees: more where the picture is wide.
fn width_of(size: (f64, f64)) -> f64 {
    if size.0 > 560.0 {
        96.0
    } else {
        78.0
    }
}

impl Painter {
    /// On this canvas.
    pub fn new(canvas: Canvas) -> Painter {
        let [floor, line, left, left_line, right, right_line, libero, paper, soft, antenna, ball, ball_edge, measure] =
            canvas.colours([
                "--floor",
                "--ink",
                "--a-ground",
                "--a-line",
                "--b-ground",
                "--b-line",
                "--good",
                "--paper",
                "--ink-soft",
                "--card-red",
                "--card-yellow",
                "--card-ink",
                "--measure",
            ]);
        Painter {
            canvas,
            colours: Colours {
                floor,
                line,
                left,
                left_line,
                right,
                right_line,
                libero,
                paper,
                soft,
                antenna,
                ball,
                ball_edge,
                measure,
            },
        }
    }

    /// Draws a moment.
    pub fn draw(&mut self, scene: &Scene, place: Place, time: f64, measure: Option<[Point; 2]>) {
        let size = self.canvas.begin();
        if size.0 < 1.0 {
            return;
        }
        let eye = place.eye(scene.net_top);
        let view = match measure {
            // What was measured is looked at from nearer.
            Some([a, b]) => View::new(eye, a.on_the_way(b, 0.5), width_of(size) * 0.25),
            None => View::new(eye, gaze(scene, place, time), width_of(size)),
        };
        let look = Look {
            place,
            time,
            view,
            measure,
        };
        for shape in picture(scene, &look) {
            self.shape(size, &shape);
        }
    }

    fn shape(&self, size: (f64, f64), shape: &Shape) {
        let half = size.0 / 2.0;
        let at = |seen: &Seen| (half + seen.right * half, size.1 / 2.0 - seen.up * half);
        match shape {
            Shape::Surface(tone, corners) => {
                let corners: Vec<(f64, f64)> = corners.iter().map(at).collect();
                self.canvas.surface(self.brush(*tone), &corners);
            }
            Shape::Line(tone, width, points) => {
                let points: Vec<(f64, f64)> = points.iter().map(at).collect();
                let width = (width * half).max(1.5);
                if *tone == Tone::Measure {
                    self.canvas.line(self.casing(), width + 4.0, &points);
                }
                self.canvas.line(self.brush(*tone), width, &points);
                // Who is of the back row has a light trunk.
                if let Tone::Trunk(end, Row::Back) = tone {
                    let inner = self.brush(Tone::Court(*end));
                    self.canvas.line(inner, width * 0.72, &points);
                }
            }
            Shape::Disc(Tone::Ball, radius, seen) => {
                let radius = (radius * half).max(3.0);
                let edge = Brush {
                    colour: &self.colours.ball_edge,
                    covers: 1.0,
                };
                self.canvas.disc(edge, at(seen), radius + 1.0);
                self.canvas.disc(self.brush(Tone::Ball), at(seen), radius);
            }
            Shape::Disc(tone, radius, seen) => {
                let radius = (radius * half).max(1.0);
                if *tone == Tone::Measure {
                    self.canvas.disc(self.casing(), at(seen), radius + 2.0);
                }
                self.canvas.disc(self.brush(*tone), at(seen), radius);
            }
            Shape::Number(tone, high, seen, number) => {
                // Smaller than this it is not read.
                let high = high * half;
                if high > 6.0 {
                    self.canvas
                        .letters(self.brush(*tone), at(seen), high, &number.to_string());
                }
            }
        }
    }

    /// Around what is drawn in, so that it is seen on any ground.
    fn casing(&self) -> Brush<'_> {
        Brush {
            colour: &self.colours.paper,
            covers: 1.0,
        }
    }

    fn brush(&self, tone: Tone) -> Brush<'_> {
        let all = &self.colours;
        let of = |end: End| match end {
            End::Left => (&all.left, &all.left_line),
            End::Right => (&all.right, &all.right_line),
        };
        let (colour, covers) = match tone {
            Tone::Floor => (&all.floor, 1.0),
            Tone::Court(end) => (of(end).0, 1.0),
            Tone::Line => (&all.line, 0.9),
            Tone::Shadow => (&all.ball_edge, 0.22),
            Tone::Mesh => (&all.soft, 0.3),
            Tone::Band => (&all.line, 0.85),
            Tone::Antenna => (&all.antenna, 1.0),
            Tone::Post => (&all.soft, 1.0),
            Tone::Player(_, Row::Libero) | Tone::Trunk(_, Row::Libero) => (&all.libero, 1.0),
            Tone::Player(end, Row::Front | Row::Back)
            | Tone::Trunk(end, Row::Front | Row::Back) => (of(end).1, 1.0),
            Tone::Number(end, Row::Back) => (of(end).1, 1.0),
            Tone::Number(_, Row::Front | Row::Libero) => (&all.paper, 1.0),
            Tone::Ball => (&all.ball, 1.0),
            Tone::Measure => (&all.measure, 1.0),
        };
        Brush { colour, covers }
    }
}

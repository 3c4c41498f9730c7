//! From how near a plan is looked at: by a key, or by two fingers.

use crate::draw::Canvas;
use leptos::ev::TouchEvent;
use leptos::html::Div;
use leptos::prelude::*;

/// How many times as large a plan is drawn, in percent; `style.css` gives it that room.
const SIZES: [u32; 3] = [100, 180, 320];

/// Two fingers that came so much farther apart look one step nearer; in percent.
const A_STEP: i32 = 135;

/// From how near a plan is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Nearness(usize);

impl Nearness {
    /// How many steps nearer than the whole of it.
    pub const fn steps(self) -> usize {
        self.0
    }

    /// A step nearer, if there is one.
    pub const fn nearer(self) -> Self {
        if self.0 + 1 < SIZES.len() { Self(self.0 + 1) } else { self }
    }

    /// A step nearer, and from the nearest back to the whole.
    pub fn next(self) -> Self {
        let nearer = self.nearer();
        if nearer == self { Self::default() } else { nearer }
    }

    /// A step back.
    pub const fn farther(self) -> Self {
        Self(self.0.saturating_sub(1))
    }

    /// As large as the canvas is from there.
    pub fn enlarged(self, canvas: Canvas) -> Canvas {
        let percent = self.percent();
        Canvas { width_px: canvas.width_px * percent / 100, height_px: canvas.height_px * percent / 100 }
    }

    fn percent(self) -> u32 {
        SIZES.get(self.0).copied().unwrap_or(100)
    }
}

/// What was in the middle stays there when the plan is drawn larger or smaller.
pub fn keep_the_middle(plan: NodeRef<Div>, nearness: RwSignal<Nearness>) {
    Effect::new(move |before: Option<Nearness>| {
        let now = nearness.get();
        if let (Some(before), Some(plan)) = (before.filter(|before| *before != now), plan.get_untracked()) {
            let (left, top) = (f64::from(plan.scroll_left()), f64::from(plan.scroll_top()));
            // Drawn first, then moved: else there is no room to move in yet.
            request_animation_frame(move || {
                let grown = f64::from(now.percent()) / f64::from(before.percent());
                let moved = |at: f64, room: i32| ((at + f64::from(room) / 2.0) * grown - f64::from(room) / 2.0) as i32;
                plan.set_scroll_left(moved(left, plan.client_width()));
                plan.set_scroll_top(moved(top, plan.client_height()));
            });
        }
        now
    });
}

/// Two fingers on a plan, and how far apart they were at the last step.
#[derive(Clone, Copy, Default)]
pub struct Fingers(StoredValue<Option<i32>>);

impl Fingers {
    /// They moved; a step for every third farther apart or nearer together.
    pub fn moved(self, event: &TouchEvent, nearness: RwSignal<Nearness>) {
        let touches = event.touches();
        let (Some(one), Some(other), None) = (touches.get(0), touches.get(1), touches.get(2)) else {
            self.0.set_value(None);
            return;
        };
        let across = f64::from(one.client_x() - other.client_x());
        let apart = libm::hypot(across, f64::from(one.client_y() - other.client_y())) as i32;
        let before = self.0.get_value().unwrap_or(apart).max(1);
        let grown = apart * 100 / before;
        self.0.set_value(Some(if grown >= A_STEP {
            nearness.update(|from| *from = from.nearer());
            apart
        } else if grown * A_STEP <= 100 * 100 {
            nearness.update(|from| *from = from.farther());
            apart
        } else {
            before
        }));
    }
}

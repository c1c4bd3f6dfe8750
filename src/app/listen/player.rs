//! A tone that is played: one at a time, quiet, begun and ended softly.

use std::cell::RefCell;

use leptos::prelude::*;

/// How loud it is, of full scale.
const LOUD: f32 = 0.08;
/// How fast it comes and goes, in seconds, so that it does not click.
const SOFTLY: f64 = 0.02;

#[derive(Clone, Copy)]
pub(super) struct Player {
    /// The frequency that is played, in Hz; none while it is silent.
    pub(super) plays: RwSignal<Option<f64>>,
}

struct Sounding {
    context: web_sys::AudioContext,
    oscillator: web_sys::OscillatorNode,
    gain: web_sys::GainNode,
}

thread_local! {
    static SOUNDING: RefCell<Option<Sounding>> = const { RefCell::new(None) };
}

impl Player {
    pub(super) fn new() -> Self {
        let plays = RwSignal::new(None);
        Effect::new(move || {
            let hertz = plays.get();
            SOUNDING.with_borrow_mut(|sounding| match hertz {
                None => {
                    if let Some(sounding) = sounding {
                        let _ = sounding.go_to(0.0);
                    }
                }
                Some(hertz) => {
                    if sounding.is_none() {
                        *sounding = Sounding::new();
                    }
                    if let Some(sounding) = sounding {
                        let _ = sounding.play(hertz);
                    }
                }
            });
        });
        Self { plays }
    }

    /// Plays a tone, or ends it where that one plays.
    pub(super) fn toggle(self, hertz: f64) {
        let plays = if self.is_playing(hertz) { None } else { Some(hertz) };
        self.plays.set(plays);
    }

    /// Whether a tone plays; whoever asks is told when that changes.
    pub(super) fn is_playing(self, hertz: f64) -> bool {
        self.plays.with(|plays| plays.is_some_and(|now| (now - hertz).abs() < 1e-9))
    }
}

impl Sounding {
    fn new() -> Option<Self> {
        let context = web_sys::AudioContext::new().ok()?;
        let (oscillator, gain) = (context.create_oscillator().ok()?, context.create_gain().ok()?);
        gain.gain().set_value(0.0);
        oscillator.connect_with_audio_node(&gain).ok()?;
        gain.connect_with_audio_node(&context.destination()).ok()?;
        oscillator.start().ok()?;
        Some(Self { context, oscillator, gain })
    }

    #[expect(clippy::cast_possible_truncation, reason = "a frequency that is heard")]
    fn play(&self, hertz: f64) -> Option<()> {
        // A context that began before anything was pressed waits.
        let _ = self.context.resume();
        self.oscillator.frequency().set_target_at_time(hertz as f32, self.context.current_time(), SOFTLY).ok()?;
        self.go_to(LOUD)
    }

    fn go_to(&self, loud: f32) -> Option<()> {
        self.gain.gain().set_target_at_time(loud, self.context.current_time(), SOFTLY).ok().map(drop)
    }
}

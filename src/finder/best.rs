//! The best found so far: the first hundred, and the front of those that nothing else beats in every wish.

/// The most wishes a search takes: those of a job, and the three that go without saying.
pub(super) const MOST: usize = crate::job::wishes::MOST_WISHES + 3;

/// How many results are kept.
pub(super) const KEPT: usize = 100;

/// More members than this a front does not take up; none was seen that came near it.
pub(super) const MOST_ON_FRONT: usize = 4_000;

/// What each preference costs, in steps missed.
pub(super) type Costs = [f64; MOST];

/// One combination and what it costs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Candidate {
    /// Steps missed of all musts together.
    pub(super) must: f64,
    /// Weighted steps missed of all preferences together.
    pub(super) score: f64,
    /// Row of the gear set, the final drive and the tyre.
    pub(super) rows: [usize; 3],
    /// Steps missed of each preference.
    pub(super) costs: Costs,
}

impl Candidate {
    fn stands_before(&self, other: &Self) -> bool {
        self.must.total_cmp(&other.must).then(self.score.total_cmp(&other.score)).is_lt()
    }
}

/// The best by musts, then by weights; of equals the first found.
#[derive(Clone, Debug, Default)]
pub(super) struct Best {
    pub(super) list: Vec<Candidate>,
}

impl Best {
    /// What a newcomer must stay below to be taken up: misses of musts, then score.
    pub(super) fn bar(&self) -> (f64, f64) {
        if self.list.len() < KEPT {
            return (f64::INFINITY, f64::INFINITY);
        }
        self.list.last().map_or((f64::INFINITY, f64::INFINITY), |last| (last.must, last.score))
    }

    pub(super) fn take(&mut self, candidate: Candidate) {
        let at = self.list.partition_point(|kept| !candidate.stands_before(kept));
        if at < KEPT {
            self.list.insert(at, candidate);
            self.list.truncate(KEPT);
        }
    }

    /// Forgets everything: nearest misses count no more once something meets every must.
    pub(super) fn clear(&mut self) {
        self.list.clear();
    }
}

/// Those that no other beats or equals in every preference, the lowest score first.
#[derive(Clone, Debug, Default)]
pub(super) struct Front {
    pub(super) members: Vec<Candidate>,
    pub(super) is_complete: bool,
    dimensions: usize,
}

impl Front {
    /// An empty front over so many preferences.
    pub(super) fn new(dimensions: usize) -> Self {
        Self { members: Vec::new(), is_complete: true, dimensions }
    }

    /// The member that is at least as good in every preference as something that costs so much. Only those with no higher score can be.
    pub(super) fn beaten_by(&self, costs: &Costs, score: f64) -> Option<usize> {
        let end = self.members.partition_point(|member| member.score <= score);
        let members = self.members.get(..end)?;
        members.iter().position(|member| self.is_no_worse(&member.costs, costs))
    }

    fn is_no_worse(&self, costs: &Costs, than: &Costs) -> bool {
        costs.iter().zip(than).take(self.dimensions).all(|(own, other)| own <= other)
    }

    /// Takes up a candidate that nothing on the front beats, and lets go of those it beats.
    pub(super) fn take(&mut self, candidate: Candidate) {
        let dimensions = self.dimensions;
        let beats = |member: &Candidate| candidate.costs.iter().zip(&member.costs).take(dimensions).all(|(own, other)| own <= other);
        self.members.retain(|member| member.score < candidate.score || !beats(member));
        if self.members.len() >= MOST_ON_FRONT {
            self.is_complete = false;
            return;
        }
        let at = self.members.partition_point(|member| member.score <= candidate.score);
        self.members.insert(at, candidate);
    }
}

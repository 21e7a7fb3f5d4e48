//! One instance before the engine: a begin for each activity, a difference for each link, a cumulative for each resource.

use std::ops::ControlFlow;
use std::time::{Duration, Instant};

use pumpkin_conflict_resolvers::resolvers::ResolutionResolver;
use pumpkin_core::Solver;
use pumpkin_core::branching::Brancher;
use pumpkin_core::branching::branchers::independent_variable_value_brancher::IndependentVariableValueBrancher;
use pumpkin_core::branching::value_selection::InDomainMin;
use pumpkin_core::branching::variable_selection::Smallest;
use pumpkin_core::optimisation::OptimisationDirection::Minimise;
use pumpkin_core::optimisation::linear_sat_unsat::LinearSatUnsat;
use pumpkin_core::results::{OptimisationResult, ProblemSolution, SolutionReference};
use pumpkin_core::termination::TimeBudget;
use pumpkin_core::variables::{DomainId, TransformableVariable};

use crate::instance::Instance;

/// How the engine decides what to try next.
#[derive(Clone, Copy)]
pub enum Branching {
    /// What it does by itself: the variables of recent conflicts.
    Own,
    /// The activity that can begin first, as early as it can.
    EarliestFirst,
}

/// The shortest length found in the time, and whether it is proven.
pub fn solve(one: &Instance, seconds: f64, branching: Branching) -> (Option<i32>, bool) {
    let began = Instant::now();
    let mut solver = Solver::default();
    let horizon = one.durations.iter().sum();
    let begins: Vec<DomainId> = one.durations.iter().map(|_| solver.new_bounded_integer(0, horizon)).collect();
    for ((followers, begin), duration) in one.followers.iter().zip(&begins).zip(&one.durations) {
        for follower in followers.iter().filter_map(|job| begins.get(*job)) {
            let tag = solver.new_constraint_tag();
            let apart = vec![begin.scaled(1), follower.scaled(-1)];
            solver.add_constraint(pumpkin_constraints::less_than_or_equals(apart, -duration, tag)).post();
        }
    }
    for (resource, units) in one.capacity.iter().enumerate() {
        let all = begins.iter().zip(&one.durations).zip(&one.demands);
        let takes: Vec<(DomainId, i32, i32)> = all
            .map(|((begin, duration), demands)| (*begin, *duration, demands.get(resource).copied().unwrap_or(0)))
            .filter(|(_, duration, demand)| *duration > 0 && *demand > 0)
            .collect();
        let tag = solver.new_constraint_tag();
        let begins: Vec<DomainId> = takes.iter().map(|take| take.0).collect();
        let durations: Vec<i32> = takes.iter().map(|take| take.1).collect();
        let demands: Vec<i32> = takes.iter().map(|take| take.2).collect();
        solver.add_constraint(pumpkin_constraints::cumulative(begins, durations, demands, *units, tag)).post();
    }
    let Some(&end) = begins.last() else { return (None, false) };
    let left = Duration::from_secs_f64(seconds).saturating_sub(began.elapsed());
    match branching {
        Branching::Own => {
            let mut brancher = solver.default_brancher();
            shortest(&mut solver, &mut brancher, end, left)
        }
        Branching::EarliestFirst => {
            let mut brancher = IndependentVariableValueBrancher::new(Smallest::new(&begins), InDomainMin);
            shortest(&mut solver, &mut brancher, end, left)
        }
    }
}

fn shortest<B: Brancher>(solver: &mut Solver, brancher: &mut B, end: DomainId, left: Duration) -> (Option<i32>, bool) {
    fn goes_on<B>(_: &Solver, _: SolutionReference, _: &B, _: &ResolutionResolver) -> ControlFlow<()> {
        ControlFlow::Continue(())
    }
    let mut resolver = ResolutionResolver::default();
    let mut time = TimeBudget::starting_now(left);
    match solver.optimise(brancher, &mut time, &mut resolver, LinearSatUnsat::new(Minimise, end, goes_on::<B>)) {
        OptimisationResult::Optimal(found) => (Some(found.get_integer_value(end)), true),
        OptimisationResult::Satisfiable(found) => (Some(found.get_integer_value(end)), false),
        _ => (None, false),
    }
}

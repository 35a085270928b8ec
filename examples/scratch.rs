//! scratch
use faultwright::*;
use std::sync::Arc;
use std::time::Instant;
fn main() {
    let loaded = Arc::new(scenario::load::demo().unwrap_or_else(|e| panic!("{e:#?}")));
    let t = Instant::now();
    let judge = scenario::solvable::Solvability::of(&loaded);
    for seed in 1..=20 {
        let t = Instant::now();
        let case = scenario::draw::draw(&loaded, seed, &|b, h| {
            let a = judge.judge(b, h);
            if a != scenario::draw::Acceptance::Accepted {
                println!("   {a:?} {:?}", h.faults);
                if a == scenario::draw::Acceptance::NotSeparable {
                    let s =
                        session::attempt::Session::begin(Arc::new(b.clone()), h.clone()).unwrap();
                    for sep in
                        judge.separations_from(h.faults.first().map(|f| &f.name), &s).unwrap()
                    {
                        if !sep.is_enough() {
                            println!("      {:?}", sep);
                        }
                    }
                }
            }
            a
        });
        match case {
            Ok(c) => {
                println!("{seed} {:?} {:?} {:?}", c.hidden.faults, c.hidden.old_codes, t.elapsed())
            }
            Err(e) => println!("{seed} {e}"),
        }
    }
    println!("draws {:?}", t.elapsed());
    let t = Instant::now();
    let briefing = Arc::new(loaded.briefing());
    let sup = scenario::suppose::suppositions(&loaded);
    let w = reasoning::world::Worlds::begin(&briefing, &sup, &|_, _| {}).unwrap();
    println!("worlds {} of {} {:?}", w.worlds.len(), sup.len(), t.elapsed());
    let b = reasoning::belief::Belief::prior(w);
    let mut e = reasoning::expert::Expert::new(briefing);
    let t = Instant::now();
    let v = e.value(&b).unwrap();
    println!("value {} {:?} {:?}", v.cost, v.proposal, t.elapsed());
    for (p, c) in e.probes().iter().zip(&v.by_probe) {
        println!("  {c:.1} {:?}", p.showing());
    }
}

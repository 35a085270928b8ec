use faultwright::*;
use std::sync::Arc;
use std::time::Instant;
#[derive(serde::Deserialize)]
struct V { #[allow(dead_code)] format: String, #[allow(dead_code)] version: u32, vehicle: vehicle::spec::VehicleSpec }
fn main() {
    let t = std::fs::read_to_string("scenarios/vehicles/harrowfen-dray.ron").unwrap();
    let v: V = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME).from_str(&t).unwrap();
    let spec = v.vehicle;
    let seg = |until_s, rpm, km_h, load, intake_deg, exhaust_deg| vehicle::route::Segment { until_s, rpm, km_h, load, intake_deg, exhaust_deg };
    let warm = vehicle::route::RouteProfile { ramp_s: 3.0, start_rpm: 700.0, segments: vec![
        seg(10.,700.,0.,0.2,0.,0.), seg(60., 2500.,60.,0.7,10.,6.), seg(110.,2000.,50.,0.6,14.,8.),
        seg(116.,3500.,90.,0.85,35.,20.), seg(130.,2400.,60.,0.4,24.,12.), seg(136.,1300.,30.,0.05,5.,0.), seg(142.,3200.,80.,0.8,34.,20.),seg(156.,2200.,50.,0.4,22.,10.), seg(162.,1100.,20.,0.05,0.,0.), seg(170.,700.,0.,0.2,0.,0.), seg(176.,2800.,70.,0.75,30.,18.), seg(186., 2000.,50.,0.35,20.,10.), seg(191.,1200.,20.,0.05,5.,0.),seg(197.,3600.,90.,0.9,36.,20.), seg(210.,2400.,60.,0.4,24.,12.), seg(220.,700.,0.,0.2,0.,0.)] };
    let mut names = faults::places(&spec);
    names.push(faults::FaultName{kind: faults::FaultKind::LowOil, place: "nosuch".into()});
    for n in names { for sev in [0.0, 0.5, 1.0] {
        let mut c = vehicle::condition::Condition::sound(&spec);
        let f = faults::Fault { name: n.clone(), severity: sev };
        if n.place.as_str() != "nosuch" { assert!(faults::apply(&f, &spec, &mut c)); }
        let start = Instant::now();
        let mut veh = vehicle::whole::Vehicle::new(Arc::new(spec.clone()), c, units::Celsius(15.0), &[], 7).unwrap();
        let mut q = vec![];
        let mut rep = None;
        for _ in 0..2 {
            q.push(veh.start().unwrap());
            let d = veh.drive(&warm).unwrap();
            q.push(d.quality);
            q.push(if veh.lamps().1 || d.oil_lamp { vehicle::run_record::Idling::Rough } else { vehicle::run_record::Idling::Smooth });
            rep = Some(d);
            veh.key_off();
            veh.stand_overnight();
        }
        let r = veh.code_report();
        let d = rep.unwrap();
        println!("{:?} {} {sev}: {:?} stored {:?} pend {:?} lamp {} | {:.1}/{:.1} {:.1}/{:.1} decided {:?} oil {:.0} {:?}", n.kind, n.place, q, r.stored.iter().map(|c| c.code).collect::<Vec<_>>(), r.pending.iter().map(|c| c.code).collect::<Vec<_>>(), r.commands_lamp, d.cams[0].mean_error, d.cams[0].furthest, d.cams[1].mean_error, d.cams[1].furthest, d.decided, veh.snapshot().unwrap().oil_c, start.elapsed());
    }}
}

//! Where the published values stand. "Read in a public copy" means the words and figures were read;
//! most official standards are paid for.

/// A source with the short name that the tables use.
#[derive(Debug, PartialEq, Eq)]
pub struct Source {
    pub key: &'static str,
    pub text: &'static str,
}

macro_rules! sources {
    ($($name:ident $key:literal $text:literal;)*) => {
        $(pub static $name: Source = Source { key: $key, text: $text };)*
        /// Every source, in the order of the list on the page.
        pub static ALL: &[&Source] = &[$(&$name),*];
    };
}

sources! {
    ARITHMETIC "arithmetic" "By hand from the definition named in the row.";
    ASTM_D341_SHEET "D341 sheet" "A public worksheet of ASTM D341 (scribd.com/document/361017004), which prints constants and result for 32 mm²/s at 40 °C and 5.4 mm²/s at 100 °C. It takes 0 °C as 273 K.";
    ASTM_D341_PAGE "D341 page" "A public page on ASTM D341 with examples (olezol.com, viscosity-temperature-extrapolation-astm-d341).";
    ASTM_D2270 "D2270" "ASTM D2270, worked examples of procedures A (§5.1.4) and B (§6.1.4), read in public copies (dgaequipment.com, pages 2791 and 2793).";
    BATTERY_MOTORHOME "battery table 1" "Open-circuit voltages by charge in a motorhome magazine's question page (motorhome.com, checking and maintaining batteries).";
    BATTERY_HANDBOOK "battery table 3" "Open-circuit voltages by charge as handbooks of batteries print them; quoted from memory.";
    BATTERY_LIST "battery table 2" "Open-circuit voltages by charge, rounded to a tenth of a volt, in a public mailing list (lists.ettus.com, thread QQLF57CG).";
    BATTERY_RESISTANCE "battery resistance" "A public page on starting batteries: the resistance of a healthy one is usually below 10 mohm (poweringautos.com, internal resistance of a 12 V car battery; it also prints 38 and 90 mohm, with which no battery would turn a starter, so it is a weak source).";
    COLD_CRANKING "cold cranking" "Ratings of starting batteries of about 50 A h by EN 50342-1, -18 °C and 7.5 V after ten seconds; quoted from memory.";
    CRANKING_PAGE "cranking page" "A public page: a healthy battery drops to 9.5 to 10.5 V while the engine is started (us.ok.com/ask/how-much-can-a-car-battery-voltage-drop-when-starting).";
    CRANKING_SERVICE "cranking test" "Vehicle makers' service text on a cold cranking test: below 9.6 V at the battery the starter is to be looked at; at 12.5 V or more it does not turn as it should.";
    CODE_EXAMPLES "code examples" "Public pages that spell codes out bit by bit: blog.csdn.net/m0_56208280/article/details/134818081 (0x0143), talk.maemo.org post 1257514 (0x0135), cnblogs.com/cokefentas/p/17514220 (0xC073, 0x9000), blog.csdn.net/qq_42957717/article/details/122546367 (0x0127, 0x8039, 0x4031), ptrnatesting.blogspot.com (0x96A1). They describe SAE J2012 / ISO 15031-6.";
    COMPUTER "irregular computer" "Exercise of a textbook on decision graphs (F. V. Jensen and T. D. Nielsen, Bayesian Networks and Decision Graphs), inputs read at quesba.com, id 1404697; answer by brute force over all sixteen orders, the book's own was not found.";
    COMPUTER_RETRIES "computer, retries" "The same inputs; answer of a model checker for partially observed decisions (storm).";
    COPPER_IACS "IEC 60028" "IEC 60028, resistivity of annealed copper 1/58 ohm mm²/m at 20 °C and the rule that 90 °C has about 28 % more; read in a public summary (tnlab.org, iec-60028).";
    COPPER_STANDARD_TEST "234.5 rule" "Temperature of a copper winding from its resistance, (234.5 + t2)/(234.5 + t1); constant read in a safety standard's text on winding temperatures (www1.woaifanyi.com/Pdd2W-ZBUHA=d).";
    FIVE_TESTS "five tests" "A fixture of this project, not published; answer of an exact dynamic program and of a model checker (storm).";
    FORCE_CALCULATOR "air-gap force" "Force of a plain air gap, F = (N I)² µ0 A / (2 g²), with two worked examples (calculator.7search.cc/calc/solenoid-force-calculator.php; the formula also at indiansolenoids.com/solenoid-force).";
    IEC_60228 "IEC 60228" "IEC 60228, largest resistance of copper conductors at 20 °C, classes 1, 2 and 5, 6; read in public copies (mycableengineering.com/knowledge-base/iec-60228-dc-resistance; etechnik-synergie.com, conductor resistance).";
    ISO_6722 "ISO 6722" "ISO 6722-1, largest resistance of automotive copper cables at 20 °C; quoted from memory.";
    J1979_COOLANT "J1979 coolant" "The reply 41 05 3C decoded as 20 °C in a library's public documentation.";
    J1979_MEMORY "J1979, memory" "Forms of SAE J1979 / ISO 15031-5 that were not read: module voltage in thousandths of a volt, run time in seconds, distance in kilometres.";
    J1979_RPM "J1979 speed" "The reply 41 0C 0E 70 in the documentation of a J1979 message layer (docs.racket-lang.org).";
    J1979_TABLE "J1979 table" "Table of the parameters of ISO 15031 with their least and greatest values (blog.csdn.net/weixin_48120109/article/details/136609335).";
    JUMP_START "jump start" "A university textbook's problem of a flat battery beside a charged one (12 V behind 0.01 ohm, 10 V behind 1 ohm, starter 0.06 ohm); quoted from memory, the currents follow from Kirchhoff's laws.";
    KIRCHHOFF_TWO "two batteries" "A worked example with two batteries and three resistors, 9 V, 12 V, 26, 62 and 37 ohm (slideshare.net, document 255609201, part A).";
    LOADING "meter loading" "A public discussion of a meter of 10 Mohm on a source of 0.1 Mohm: 4.95 V of 5 V, about 1 % low (forum.allaboutcircuits.com, thread 118345).";
    METER_SERVICE "meter minimum" "What vehicle makers' service information asks of a multimeter: 10 Mohm or more on direct voltage.";
    NOISY_TESTS "noisy tests" "R. E. Neapolitan 1990, page 373, after R. A. Howard 1962; inputs read in a public example page, values by hand.";
    ORIFICE_HEAD "orifice, head" "A public worked example: Cd 0.62, 0.001 m², a head of 2 m of water, 0.00388 m³/s (calhub.xyz/physics/orifice-flow).";
    ORIFICE_HYDRAULIC "orifice, oil" "A hydraulics trainer's example: 30 l/min of mineral oil through a bore of 2 mm, 288 bar (insanehydraulics.com, orifice pressure drop theory).";
    ORIFICE_US "orifice, US" "The US trade's form for specific gravity 1, Q[gpm] = (D[in]/0.23)² √Δp[psi] (hoseandfittings.com/hydor).";
    REGULATOR "regulator" "Two vehicle makers' service texts, charging voltage by the temperature of the regulator.";
    RESIDUAL_GAS "residual gas" "Correlation of residual gas of Fox, Cheng and Heywood, SAE 931025: the paper was not read, its two terms and four constants were, in the source of a published engine-cycle program; values by hand.";
    RESIDUAL_TEXTBOOK "residual gas, textbook" "J. B. Heywood, Internal Combustion Engine Fundamentals: from 20 % at light load to 7 % at full load in a spark-ignition engine; quoted from memory.";
    RL_DECAY "RL decay" "Worked example: 7.50 mH, 3.00 ohm, 10.0 A, after 5.00 ms (holooly.com, the 7.50 mH inductor); question and method read, digits recomputed.";
    RL_RISE "RL rise" "Worked example: 45 mH, 60 ohm, 15 V, after 7.0 ms (ask.okorder.com, 778268).";
    SAE_J300 "J300" "SAE J300, JAN 2015, kinematic viscosity at 100 °C, read in public copies of its table (raso.name, viscosity grades for engine oils).";
    STARTER_DRAW "starter draw" "A public sheet of general figures for the most current of a starter on the vehicle at room temperature: 150 to 185 A for four cylinders (scribd.com/document/486200162).";
    SERVICE_CODES "code rules" "Vehicle makers' service text on code memory: pending after the first driving cycle with the fault, confirmed with the lamp after the next, lamp out after three passing cycles, code erased after 40 warm-ups, a permanent code gone after a clear and one passing cycle.";
    SERVICE_COILS "coil windows" "Two groups of vehicle makers' service text, resistance of oil-control valves at 0, 20 and 40 °C, each rounded to 0.1 ohm.";
    SERVICE_WARM_UP "warm-up" "Vehicle makers' service text: a warm-up cycle is a rise of at least 22 °C (40 °F) that reaches at least 71 °C (160 °F).";
    WIRE_TABLE "wire table" "Ohms per 1000 ft of solid copper by American wire gauge at 20 °C (cirris.com/wire-resistance-calculator).";
    USED_CAR "used car" "R. A. Howard's used car buyer; numbers and answer in the documentation of a library for decision programming (DecisionProgramming.jl, example used-car-buyer).";
}

//! Every refusal, word for word.

use crate::document::{Instance, is_json, is_set, read, read_plans};

fn refused(text: &str, sentences: &[&str]) {
    let refusals = read(text).expect_err(text);
    let said: Vec<String> = refusals.iter().map(ToString::to_string).collect();
    assert_eq!(said, sentences, "{text}");
    for word in ["invalid", "illegal", "please", "sorry"] {
        assert!(said.iter().all(|said| !said.contains(word)), "{said:?}");
    }
}

/// An instance of sheets with these fields in front, this stock and these pieces.
fn sheets(fields: &str, stock: &str, pieces: &str) -> String {
    format!(r#"{{"name":"n","dim":2,{fields}"stock":[{stock}],"pieces":[{pieces}]}}"#)
}

fn sticks(fields: &str, stock: &str, pieces: &str) -> String {
    format!(r#"{{"name":"n","dim":1,{fields}"stock":[{stock}],"pieces":[{pieces}]}}"#)
}

#[test]
fn a_text_that_holds_no_instances() {
    refused(
        "{\n \"name\": }",
        &["the text is no JSON from line 2, column 10 on; mend it there"],
    );
    refused("", &["the text is empty; give all of it"]);
    for cut_off in ["{\"name\": \"n\", ", "[{", "{\"name\": \"n\",\n"] {
        refused(
            cut_off,
            &["the text ends before its brackets are closed; give all of it"],
        );
    }
    refused(
        &"[".repeat(100_000),
        &["the text is no JSON from line 1, column 128 on; mend it there"],
    );
    refused(
        "7",
        &[
            "7 stands where a cutting problem, a set or a list of them belongs; give a cutting problem, a set or a list of them",
        ],
    );
    refused(
        "[7]",
        &["instances[0]: 7 stands where an object in braces belongs; give an object in braces"],
    );
    refused(
        r#"{"format":"cutting-set/2","name":1,"defaults":[],"instances":[],"more":1}"#,
        &[
            "more: no such field; leave it out, or use one of format, name, defaults, instances",
            "format: \"cutting-set/2\" cannot be read here; give \"cutting-set/1\"",
            "name: 1 stands where a text in quotes belongs; give a text in quotes",
            "defaults: [] stands where an object in braces belongs; give an object in braces",
        ],
    );
    refused(
        r#"{"instances":7}"#,
        &["instances: 7 stands where a list belongs; give a list"],
    );
}

#[test]
fn fields_of_an_instance() {
    refused(
        r#"{"format":"cutting-instance/2","stock":[],"pieces":[]}"#,
        &[
            "problem 1, format: \"cutting-instance/2\" cannot be read here; give \"cutting-instance/1\"",
            "problem 1, name: not given; write a name",
            "problem 1, dim: not given; write 1 for sticks or 2 for sheets",
        ],
    );
    refused(
        r#"{"name":"n","dim":3,"stock":[],"pieces":[]}"#,
        &[
            "problem \"n\", dim: 3 stands where 1 for sticks or 2 for sheets belongs; give 1 for sticks or 2 for sheets",
        ],
    );
    refused(
        r#"{"name":"n","dim":2}"#,
        &[
            "problem \"n\", stock: not given; write a list",
            "problem \"n\", pieces: not given; write a list",
        ],
    );
}

#[test]
fn rules_of_an_instance() {
    refused(
        &sheets(
            r#""guillotine":false,"objective":"area","first_cut":"x","colour":1,"#,
            "",
            "",
        ),
        &[
            "problem \"n\", colour: no such field; leave it out, or use one of format, name, family, dim, unit, objective, kerf, trim, guillotine, stages, first_cut, final_trim, min_strip, rotate, use_windows, stock, pieces, best",
            "problem \"n\", objective: \"area\" stands where \"bins\", \"cost\" or \"value\" belongs; give \"bins\", \"cost\" or \"value\"",
            "problem \"n\", guillotine: plans are cut from edge to edge only; leave the field out, or give true",
            "problem \"n\", first_cut: \"x\" stands where \"v\", \"h\" or \"any\" belongs; give \"v\", \"h\" or \"any\"",
        ],
    );
    refused(
        &sheets(
            r#""kerf":0.5,"min_strip":-3,"stages":1e30,"rotate":"no","trim":[1],"best":{"ub":2.5},"#,
            "",
            "",
        ),
        &[
            "problem \"n\", best.ub: 2.5 is not a whole number; choose a unit in which it is, and give that",
            "problem \"n\", stages: 1e+30 is too large; give at most 4294967295",
            "problem \"n\", kerf: 0.5 is not a whole number; choose a unit in which it is, and give that",
            "problem \"n\", min_strip: -3 is below 0; give a whole number from 0 up",
            "problem \"n\", trim: [1] stands where [left, right, bottom, top] in whole numbers belongs; give [left, right, bottom, top] in whole numbers",
            "problem \"n\", rotate: \"no\" stands where true or false belongs; give true or false",
        ],
    );
    refused(
        r#"[{"name":"n","dim":1,"stock":[],"pieces":[]},{"name":"n","dim":1,"stock":[],"pieces":[]}]"#,
        &["problem \"n\", name: \"n\" is named twice; give each its own name"],
    );
}

#[test]
fn stock_and_pieces_of_sheets() {
    refused(
        &sheets(
            "",
            r#"{"id":"s","w":0,"h":-1},{"id":"s","w":1.5,"l":3,"h":2,"run":"x"},{"w":1,"h":1},7"#,
            "",
        ),
        &[
            "problem \"n\", stock[3]: 7 stands where an object in braces belongs; give an object in braces",
            "problem \"n\", stock[0].w: a size of 0 cannot be cut; give at least 1",
            "problem \"n\", stock[0].h: -1 is below 0; give a whole number from 0 up",
            "problem \"n\", stock[1].l: this field belongs to sticks (dim 1); leave it out",
            "problem \"n\", stock[1].run: this field belongs to sticks (dim 1); leave it out",
            "problem \"n\", stock[1].id: \"s\" is named twice; give each its own name",
            "problem \"n\", stock[1].w: 1.5 is not a whole number; choose a unit in which it is, and give that",
            "problem \"n\", stock[2].id: not given; write a name",
        ],
    );
    refused(
        &sheets(
            "",
            r#"{"id":"s","w":1099511627776,"h":1099511627776}"#,
            r#"{"id":"a","w":1099511627777,"h":2,"qty":99999999999999999999},
            {"id":"b","w":2,"h":2,"qty":"3","window":[1],"together":{},"size":1,"priority":4294967296}"#,
        ),
        &[
            "problem \"n\", stock[0].cost: not given, and width times height is too large to stand for it; give a number",
            "problem \"n\", pieces[0].w: 1099511627777 is too large; give at most 1099511627776",
            "problem \"n\", pieces[0].qty: 1e+20 is too large; give at most 18446744073709551615",
            "problem \"n\", pieces[1].together: this field belongs to sticks (dim 1); leave it out",
            "problem \"n\", pieces[1].size: no such field; leave it out, or use one of id, l, w, h, qty, value, rot, window, together, priority, due",
            "problem \"n\", pieces[1].qty: \"3\" stands where a whole number belongs; give a whole number",
            "problem \"n\", pieces[1].window: [1] stands where [width, height] in whole numbers belongs; give [width, height] in whole numbers",
            "problem \"n\", pieces[1].priority: 4294967296 is too large; give at most 4294967295",
        ],
    );
}

#[test]
fn stock_and_pieces_of_sticks() {
    refused(
        &sticks(
            r#""trim":[1,2.5],"#,
            r#"{"id":"s","l":9,"flaws":[[1,2],[3]],"w":3},{"id":5,"flaws":1}"#,
            r#"{"id":"a","l":0,"rot":true},{"id":"b","l":1,"together":{"stick":"x","run":"y"}}"#,
        ),
        &[
            "problem \"n\", trim: 2.5 is not a whole number; choose a unit in which it is, and give that",
            "problem \"n\", stock[0].w: this field belongs to sheets (dim 2); leave it out",
            "problem \"n\", stock[0].flaws[1]: [3] stands where [from, to] in whole numbers belongs; give [from, to] in whole numbers",
            "problem \"n\", stock[1].id: 5 stands where a text in quotes belongs; give a text in quotes",
            "problem \"n\", stock[1].l: not given; write a whole number of at least 1",
            "problem \"n\", stock[1].flaws: 1 stands where a list belongs; give a list",
            "problem \"n\", pieces[0].rot: this field belongs to sheets (dim 2); leave it out",
            "problem \"n\", pieces[0].l: a size of 0 cannot be cut; give at least 1",
            "problem \"n\", pieces[1].together: {\"run\":\"y\",\"stick\":\"x\"} stands where {\"stick\": NAME} or {\"run\": NAME} belongs; give {\"stick\": NAME} or {\"run\": NAME}",
        ],
    );
}

fn plan_refused(instances: &[Instance], text: &str, sentences: &[&str]) {
    let refusals = read_plans(text, instances).expect_err(text);
    let said: Vec<String> = refusals.iter().map(ToString::to_string).collect();
    assert_eq!(said, sentences, "{text}");
}

#[test]
fn plans() {
    let text = sheets(
        "",
        r#"{"id":"s","w":30,"h":30}"#,
        r#"{"id":"p","w":20,"h":10,"qty":5}"#,
    );
    let instances = read(&text).expect("readable");
    plan_refused(
        &instances,
        r#"[{"format":"cutting-plan/2","instance":"m"},{},7]"#,
        &[
            "plan of \"m\", format: \"cutting-plan/2\" cannot be read here; give \"cutting-plan/1\"",
            "plan of \"m\", instance: there is no \"m\"; use a name that the problem gives",
            "plan 2, instance: not given; write a name",
            "plan 3, instance: not given; write a name",
        ],
    );
    plan_refused(
        &instances,
        r#"{"instance":"n","sticks":[]}"#,
        &["plan of \"n\", sheets: not given; write a list"],
    );
    plan_refused(
        &instances,
        r#"{"instance":"n","objective":1.5,"sheets":[{"stock":"t","copies":-1,"pieces":[{"id":"q","x":0,"y":0,"w":1}]}]}"#,
        &[
            "plan of \"n\", sheets[0].stock: there is no \"t\"; use a name that the problem gives",
            "plan of \"n\", sheets[0].pieces[0].id: there is no \"q\"; use a name that the problem gives",
            "plan of \"n\", sheets[0].pieces[0].h: not given; write a whole number",
            "plan of \"n\", sheets[0].copies: -1 is below 0; give a whole number from 0 up",
            "plan of \"n\", objective: 1.5 is not a whole number; choose a unit in which it is, and give that",
        ],
    );
    plan_refused(
        &instances,
        r#"{"instance":"n","sheets":[{"stock":"s","pieces":[],"cuts":[{"x":0,"y":0,"w":30,"h":30,"dir":"u","at":10}]}]}"#,
        &[
            "plan of \"n\", sheets[0].cuts[0].dir: \"u\" stands where \"v\" or \"h\" belongs; give \"v\" or \"h\"",
        ],
    );
    // Four pieces round a hole: no cut from edge to edge frees them.
    plan_refused(
        &instances,
        r#"{"instance":"n","sheets":[{"stock":"s","pieces":[
            {"id":"p","x":0,"y":0,"w":20,"h":10},{"id":"p","x":20,"y":0,"w":10,"h":20,"rotated":true},
            {"id":"p","x":10,"y":20,"w":20,"h":10},{"id":"p","x":0,"y":10,"w":10,"h":20,"rotated":true}]}]}"#,
        &[
            "plan of \"n\", sheets[0].cuts: no cuts are listed and none were found that free every piece within the rules; list them",
        ],
    );
}

#[test]
fn a_place_in_the_text_is_counted_from_1() {
    let place = |text: &str| {
        let refusals = read(text).expect_err(text);
        refusals[0].reason.place()
    };
    assert_eq!(place("{\n}}"), Some((2, 2)));
    assert_eq!(place("{\"name\": \"n\",\n"), Some((2, 1)));
    assert_eq!(place("{}"), None);
}

#[test]
fn the_form_of_a_text_is_told() {
    for json in ["{}", "\u{feff} {\"dim\": 1}", "[{}]", "[ ]"] {
        assert!(is_json(json), "{json}");
    }
    for toml in ["", "units = \"in\"", "[[piece]]", "# a list\n[[piece]]"] {
        assert!(!is_json(toml), "{toml}");
    }
    for set in ["[]", "\u{feff}{\"instances\": []}"] {
        assert!(is_set(set), "{set}");
    }
    for one in ["{}", "{", "7"] {
        assert!(!is_set(one), "{one}");
    }
}

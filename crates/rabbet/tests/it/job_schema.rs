use crate::bench::Bench;

#[test]
fn the_schema_is_json_and_names_the_fields() {
    let ran = Bench::new().run(&["job", "schema"]);
    assert_eq!((ran.exit, ran.stderr.as_str()), (0, ""));
    let schema = ran.json();
    assert_eq!(
        schema["$schema"],
        "https://json-schema.org/draft/2020-12/schema"
    );
    for field in ["rabbet", "units", "art", "frame", "mat", "fit", "settings"] {
        assert!(schema["properties"][field].is_object(), "{field}");
    }
}

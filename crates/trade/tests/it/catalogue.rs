//! The catalogue: the starter's own order, `like`, and refusals.

use measure::Length;
use trade::settings::citation;
use trade::{Catalogue, CatalogueFault, Kind, Material, Measured, Sourced, SourcedStatus};

fn like(code: &str, base: &str) -> Material {
    Material {
        like: Some(base.to_owned()),
        ..Material::named(code)
    }
}

#[test]
fn the_starter_is_whole() {
    let catalogue = Catalogue::starter();
    assert!(catalogue.iter().count() > 30);
    for material in catalogue.iter() {
        let code = &material.code;
        assert!(
            material.like.is_none(),
            "{code} stands alone once it is read"
        );
        let kind = material
            .kind
            .unwrap_or_else(|| panic!("{code} is of no kind"));
        let sheet = matches!(kind, Kind::Board | Kind::Backing | Kind::Glazing);
        assert_eq!(
            sheet,
            material.thickness.is_some(),
            "{code} has a thickness if it is a sheet"
        );
        assert_ne!(
            sheet,
            material.profile.is_some(),
            "{code} has a profile if it is a strip"
        );
        assert_eq!(kind == Kind::Glazing, material.pane.is_some(), "{code}");
    }
}

#[test]
fn values_that_were_published_name_a_listed_source() {
    for material in Catalogue::starter().iter() {
        let Some(thickness) = &material.thickness else {
            continue;
        };
        let cited = thickness.source().and_then(citation).is_some();
        if thickness.status() == SourcedStatus::Published {
            assert!(cited, "{} cites {:?}", material.code, thickness.source());
        }
        assert!(
            cited || thickness.source().is_none(),
            "{} cites a stranger",
            material.code
        );
    }
}

#[test]
fn profiles_are_mouldings_that_can_be_made() {
    for material in Catalogue::starter().iter() {
        let Some(profile) = &material.profile else {
            continue;
        };
        let code = &material.code;
        assert!(
            profile.face.is_positive() && profile.height.is_positive(),
            "{code}"
        );
        assert!(
            *profile.lip < *profile.face,
            "{code}: the lip is part of the face"
        );
        assert!(*profile.rabbet_depth <= *profile.height, "{code}");
        for [x, y] in &profile.outline {
            assert!(
                **x <= *profile.face && **y <= *profile.height,
                "{code}: outline in its box"
            );
        }
    }
}

#[test]
fn what_is_like_another_takes_what_it_does_not_say() {
    let thick = Material {
        thickness: Some(Sourced::Plain(Measured(Length::mm(3)))),
        ..like("thick", "mat-4-conservation")
    };
    let catalogue = Catalogue::starter();
    let catalogue = catalogue
        .with(&[like("thicker", "thick"), thick])
        .expect("it is taken");
    let (base, own) = (
        catalogue.find("mat-4-conservation"),
        catalogue.find("thicker"),
    );
    let (base, own) = (
        base.expect("the starter has it"),
        own.expect("it was added"),
    );
    assert_eq!(own.sheets, base.sheets);
    assert_eq!(own.kind, Some(Kind::Board));
    assert_eq!(
        own.thickness.as_ref().map(|thickness| **thickness.is()),
        Some(Length::mm(3))
    );
}

#[test]
fn a_material_of_the_job_stands_before_its_namesake() {
    let catalogue = Catalogue::starter();
    let own = Material {
        kind: Some(Kind::Board),
        ..Material::named("glass-2")
    };
    let changed = catalogue.with(&[own]).expect("it is taken");
    assert_eq!(
        changed.find("glass-2").expect("there").kind,
        Some(Kind::Board)
    );
    assert_eq!(
        catalogue.find("glass-2").expect("there").kind,
        Some(Kind::Glazing)
    );
}

#[test]
fn a_material_like_its_own_code_is_laid_over_its_namesake() {
    let own = "[[material]]\ncode = \"glass-2\"\nlike = \"glass-2\"\nnote = \"ours\"\n";
    let starter = Catalogue::starter();
    let laid = starter.under(own).expect("it is laid over");
    let (below, above) = (starter.find("glass-2"), laid.find("glass-2"));
    let (below, above) = (below.expect("there"), above.expect("there"));
    assert_eq!(above.note.as_deref(), Some("ours"));
    assert_eq!(above.sheets, below.sheets);
    assert_eq!(above.kind, below.kind);
    assert!(Catalogue::read(own).is_err(), "there is nothing below it");
}

#[test]
fn what_leads_nowhere_is_refused() {
    let catalogue = Catalogue::starter();
    let refused = |materials: &[Material]| catalogue.with(materials).expect_err("refused");
    let circle = refused(&[like("a", "b"), like("b", "c"), like("c", "a")]);
    assert_eq!(
        circle,
        CatalogueFault::Circle {
            chain: "a → b → c → a".to_owned()
        }
    );
    let own = refused(&[like("a", "a")]);
    assert_eq!(
        own,
        CatalogueFault::Circle {
            chain: "a → a".to_owned()
        }
    );
    let twice = refused(&[Material::named("a"), Material::named("a")]);
    assert_eq!(
        twice,
        CatalogueFault::Twice {
            code: "a".to_owned()
        }
    );
    let missing = refused(&[like("a", "mat-8-mus")]);
    assert!(
        missing
            .to_string()
            .contains("the nearest code is mat-8-museum"),
        "{missing}"
    );
}

#[test]
fn a_catalogue_file_is_read_or_its_fault_named() {
    let text = "[[material]]\ncode = \"mine\"\nkind = \"board\"\nthickness = \"1/16 in\"\n";
    let read = Catalogue::read(text).expect("it reads");
    let thickness = read.find("mine").expect("there").thickness.clone();
    assert_eq!(
        thickness,
        Some(Sourced::Plain(Measured(Length::inch_fraction(1, 16))))
    );
    for text in [
        "[[material]]\n",
        "material = 1\n",
        "[[material]]\ncode = \"a\"\ncolor = 1\n",
    ] {
        let refused = Catalogue::read(text).expect_err("refused");
        assert!(
            matches!(refused, CatalogueFault::Unreadable(_)),
            "{refused}"
        );
    }
}

//! The floors of small made-up pages: what has to be found, and what has to be let pass.

use tempfile::TempDir;

use super::crowded;
use super::pages::Pages;

fn written(files: &[(&str, &str)]) -> TempDir {
    let folder = TempDir::new().unwrap();
    for (name, text) in files {
        let file = folder.path().join(name);
        std::fs::create_dir_all(file.parent().unwrap()).unwrap();
        std::fs::write(file, text).unwrap();
    }
    folder
}

fn pages(files: &[(&str, &str)]) -> Pages {
    Pages::read(written(files).path())
}

#[test]
fn an_import_in_any_of_its_forms_is_followed_and_a_comment_is_not() {
    let upward = |text: &str| pages(&[("show/a.svelte", text), ("parts/b.svelte.ts", "")]).upward();
    let found = ["show/a.svelte imports parts/b.svelte.ts"];
    assert_eq!(upward("<script lang=\"ts\">\n  import B, { type C } from '../parts/b.svelte.ts';\n</script>"), found);
    assert_eq!(upward("import type {\n  C,\n} from \"../parts/b.svelte.ts\";"), found);
    assert_eq!(upward("export * from '../parts/b.svelte.ts';"), found);
    assert_eq!(upward("import '../parts/b.svelte.ts';"), found);
    assert_eq!(upward("const load = async () => (await import('../parts/b.svelte.ts')).c;"), found);
    assert_eq!(upward("// import B from '../parts/b.svelte.ts';\n/*\n * from '../parts/b.svelte.ts'\n */"), [""; 0]);
    assert_eq!(upward("import { mount } from 'svelte';"), [""; 0]);
}

#[test]
fn a_page_knows_what_stands_below_it_and_nobody_knows_a_page() {
    let found = pages(&[
        ("places/today/Today.svelte", "import '../../door/wire.ts'; import '../../parts/base/Button.svelte';"),
        ("parts/base/Button.svelte", "import { today } from '../../places/today/Today.svelte';"),
        ("door/wire.ts", "export type * from '../../../bindings/door.ts';"),
        ("words/index.ts", "import '../../../bindings/door.ts'; import '../door/gone.ts'; import './look.css';"),
        ("words/all.ts", "import.meta.glob<Text>('../../../fixtures/words/en/*.ftl');"),
        ("show/some.ts", "const all = import.meta.glob(\"../../../fixtures/words/en/*.ftl\", {});"),
        ("words/look.css", ""),
        ("gadgets/a.ts", ""),
        ("App.svelte", "import './places/today/Today.svelte';"),
    ]);
    assert_eq!(found.upward(), ["parts/base/Button.svelte imports places/today/Today.svelte"]);
    assert_eq!(
        found.past_the_door(),
        ["show/some.ts imports ../../../fixtures/words/en/*.ftl", "words/index.ts imports ../../../bindings/door.ts"]
    );
    assert_eq!(found.lost(), ["words/index.ts imports ../door/gone.ts"]);
    assert_eq!(found.homeless(), ["gadgets/a.ts"]);
}

#[test]
fn a_room_of_a_trade_may_import_what_is_shared_and_no_other_trade() {
    let found = pages(&[
        ("places/numbers/index.ts", "export * from './drive/Chain.svelte'; export * from './brakes/Brakes.svelte';"),
        ("places/numbers/drive/Chain.svelte", "import '../brakes/Brakes.svelte'; import '../shared/Fields.svelte';"),
        ("places/numbers/brakes/Brakes.svelte", "import '../../bike/fields.ts'; import '../../../parts/a.ts';"),
        ("places/numbers/shared/Fields.svelte", "import '../paint/shared/surfaces.ts';"),
        (
            "places/numbers/paint/cure/Cure.svelte",
            "import '../shared/surfaces.ts'; import '../../shared/Fields.svelte';",
        ),
        ("places/numbers/paint/shared/surfaces.ts", ""),
        ("places/bike/fields.ts", ""),
        ("parts/a.ts", ""),
    ]);
    assert_eq!(
        found.sideways(),
        [
            "places/numbers/brakes/Brakes.svelte imports places/bike/fields.ts",
            "places/numbers/drive/Chain.svelte imports places/numbers/brakes/Brakes.svelte",
            "places/numbers/shared/Fields.svelte imports places/numbers/paint/shared/surfaces.ts",
        ]
    );
}

#[test]
fn folders_that_know_each_other_by_a_third_are_a_circle_and_files_of_one_folder_are_none() {
    let found = pages(&[
        ("parts/a/a.ts", "import '../b/b.ts'; import './more.ts';"),
        ("parts/a/more.ts", "import './a.ts';"),
        ("parts/b/b.ts", "import '../c/c.ts';"),
        ("parts/c/c.ts", "import '../a/more.ts';"),
        ("parts/d/d.ts", "import '../a/a.ts';"),
    ]);
    assert_eq!(
        found.circles(),
        [
            "circle of parts/a, parts/b, parts/c",
            "parts/a/a.ts imports parts/b/b.ts",
            "parts/b/b.ts imports parts/c/c.ts",
            "parts/c/c.ts imports parts/a/more.ts",
        ]
    );
}

#[test]
fn the_seventeenth_file_of_a_folder_is_one_too_many() {
    let names: Vec<String> = (0..17).map(|at| format!("parts/{at}.css")).collect();
    let files: Vec<(&str, &str)> = names.iter().map(|name| (name.as_str(), "")).collect();
    assert_eq!(crowded(written(&files[1..]).path()), [""; 0]);
    assert_eq!(crowded(written(&files).path()), ["parts: 17 files"]);
}

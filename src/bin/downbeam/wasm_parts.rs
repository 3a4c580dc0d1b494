//! A WebAssembly module cut in two that share memory, tables and globals: the first part runs by itself, the rest is added to it when it has
//! come. A page shows its first picture with the first part alone.
//!
//! What stays in the first part is whatever its exports reach by calls, and every function that is in a table, since where those are
//! called from cannot be seen. No call leads from there into the rest, so nothing has to stand in for what has not come. The rest
//! imports what it calls from the first part's exports, under the module name [`FIRST`].
//!
//! Limits: one memory; data and table entries all stay in the first part.

use anyhow::Context;
use std::collections::HashSet;
use walrus::passes::gc;
use walrus::{ExportItem, FunctionKind, GlobalKind, ImportKind, ImportedFunction, Module};

/// The module name under which the rest asks for the first part's exports; the glue gives them by it (`build/two_parts.js`).
const FIRST: &str = "first";

/// The two parts, as bytes.
pub(crate) struct Parts {
    pub(crate) first: Vec<u8>,
    pub(crate) rest: Vec<u8>,
}

/// Cuts the exports named in `later` off, with whatever they alone need. Fails where one of them is none.
pub(crate) fn cut(wasm: &[u8], later: &[&str]) -> anyhow::Result<Parts> {
    let mut alone = parsed(wasm)?;
    for name in later {
        alone
            .exports
            .get_func(name)
            .with_context(|| format!("the engine has no '{name}' to put into its second part"))?;
    }
    let later = |name: &str| later.contains(&name);
    delete_exports(&mut alone, later);
    gc::run(&mut alone);
    let in_first: HashSet<usize> = alone.funcs.iter().map(|f| f.id().index()).collect();

    let mut rest = parsed(wasm)?;
    delete_exports(&mut rest, |name| !later(name));
    rest.start = None;
    import_shared(&mut rest, &in_first);
    gc::run(&mut rest);

    // All were parsed from the same bytes, so that what is number n in one is number n in the other.
    let mut first = parsed(wasm)?;
    delete_exports(&mut first, later);
    let wanted: Vec<(String, Option<Item>)> = rest
        .imports
        .iter()
        .filter(|i| i.module == FIRST)
        .map(|i| (i.name.clone(), Item::of(&i.kind)))
        .collect();
    for (name, item) in wanted {
        let item = item
            .and_then(|item| item.within(&first))
            .context("a part of the engine lacks what the other asks for")?;
        first.exports.add(&name, item);
    }
    gc::run(&mut first);
    Ok(Parts { first: first.emit_wasm(), rest: rest.emit_wasm() })
}

fn parsed(wasm: &[u8]) -> anyhow::Result<Module> {
    Module::from_buffer(wasm).context("cannot read the compiled engine")
}

fn delete_exports(module: &mut Module, gone: impl Fn(&str) -> bool) {
    let gone: Vec<_> = module.exports.iter().filter(|e| gone(&e.name)).map(|e| e.id()).collect();
    gone.into_iter().for_each(|id| module.exports.delete(id));
}

/// Makes imports of the first part's functions and of all memories, tables and globals, and drops what fills those.
fn import_shared(module: &mut Module, functions: &HashSet<usize>) {
    let data: Vec<_> = module.data.iter().map(|data| data.id()).collect();
    data.into_iter().for_each(|id| module.data.delete(id));
    let elements: Vec<_> = module.elements.iter().map(|element| element.id()).collect();
    elements.into_iter().for_each(|id| module.elements.delete(id));

    let shared: Vec<_> =
        module.funcs.iter_local().map(|(id, _)| id).filter(|id| functions.contains(&id.index())).collect();
    for (n, id) in shared.into_iter().enumerate() {
        let ty = module.funcs.get(id).ty();
        let import = module.imports.add(FIRST, &short_name(n), id);
        module.funcs.get_mut(id).kind = FunctionKind::Import(ImportedFunction { import, ty });
    }
    let Module { memories, tables, globals, imports, .. } = module;
    for (n, memory) in memories.iter_mut().filter(|memory| memory.import.is_none()).enumerate() {
        memory.data_segments.clear();
        memory.import = Some(imports.add(FIRST, &format!("memory{n}"), memory.id()));
    }
    for (n, table) in tables.iter_mut().filter(|table| table.import.is_none()).enumerate() {
        table.elem_segments.clear();
        table.import = Some(imports.add(FIRST, &format!("table{n}"), table.id()));
    }
    let local: Vec<_> =
        globals.iter().filter(|g| matches!(g.kind, GlobalKind::Local(_))).map(|g| g.id()).collect();
    for (n, id) in local.into_iter().enumerate() {
        let import = imports.add(FIRST, &format!("global{n}"), id);
        globals.get_mut(id).kind = GlobalKind::Import(import);
    }
}

/// Letters and digits for a number, two of them for most.
fn short_name(mut n: usize) -> String {
    const SIGNS: &[u8; 36] = b"abcdefghijklmnopqrstuvwxyz0123456789";
    let mut name = String::new();
    loop {
        name.push(char::from(SIGNS[n % SIGNS.len()]));
        n /= SIGNS.len();
        if n == 0 {
            return name;
        }
    }
}

/// What is imported, by its number in the module.
enum Item {
    Function(usize),
    Memory(usize),
    Table(usize),
    Global(usize),
}

impl Item {
    /// `None` for a tag: the engine throws none.
    fn of(kind: &ImportKind) -> Option<Self> {
        Some(match kind {
            ImportKind::Function(id) => Self::Function(id.index()),
            ImportKind::Memory(id) => Self::Memory(id.index()),
            ImportKind::Table(id) => Self::Table(id.index()),
            ImportKind::Global(id) => Self::Global(id.index()),
            ImportKind::Tag(_) => return None,
        })
    }

    /// The same in the other part; `None` where there is none.
    fn within(&self, module: &Module) -> Option<ExportItem> {
        match *self {
            Self::Function(n) => {
                module.funcs.iter().map(|f| f.id()).find(|id| id.index() == n).map(ExportItem::Function)
            }
            Self::Memory(n) => {
                module.memories.iter().map(|m| m.id()).find(|id| id.index() == n).map(ExportItem::Memory)
            }
            Self::Table(n) => {
                module.tables.iter().map(|t| t.id()).find(|id| id.index() == n).map(ExportItem::Table)
            }
            Self::Global(n) => {
                module.globals.iter().map(|g| g.id()).find(|id| id.index() == n).map(ExportItem::Global)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;
    use walrus::{ConstExpr, FunctionBuilder, FunctionId, ValType};

    /// Four functions: `early` calls `shared`, `late` calls `shared` and `alone`; a memory with data, a counter, and `tabled` in a table.
    fn whole() -> Vec<u8> {
        let mut module = Module::default();
        let memory = module.memories.add_local(false, false, 1, None, None);
        let start = ConstExpr::Value(walrus::ir::Value::I32(8));
        let data = module.data.add(walrus::DataKind::Active { memory, offset: start.clone() }, vec![7; 4]);
        module.memories.get_mut(memory).data_segments.insert(data);
        let counter = module.globals.add_local(ValType::I32, true, false, start);
        let leaf = |module: &mut Module| {
            let mut body = FunctionBuilder::new(&mut module.types, &[], &[ValType::I32]);
            body.func_body().global_get(counter);
            body.finish(vec![], &mut module.funcs)
        };
        let [shared, alone, tabled] = [(); 3].map(|()| leaf(&mut module));
        let caller = |module: &mut Module, called: &[FunctionId]| {
            let mut body = FunctionBuilder::new(&mut module.types, &[], &[]);
            for &f in called {
                body.func_body().call(f).drop();
            }
            body.finish(vec![], &mut module.funcs)
        };
        let (early, late) = (caller(&mut module, &[shared]), caller(&mut module, &[shared, alone]));
        let table = module.tables.add_local(false, 1, Some(1), walrus::RefType::FUNCREF);
        let offset = ConstExpr::Value(walrus::ir::Value::I32(0));
        let kind = walrus::ElementKind::Active { table, offset };
        let element = module.elements.add(kind, walrus::ElementItems::Functions(vec![tabled]));
        module.tables.get_mut(table).elem_segments.insert(element);
        for (name, item) in [
            ("early", early.into()),
            ("late", late.into()),
            ("memory", ExportItem::Memory(memory)),
            ("table", ExportItem::Table(table)),
        ] {
            module.exports.add(name, item);
        }
        module.emit_wasm()
    }

    fn local_functions(module: &Module) -> usize {
        module.funcs.iter_local().count()
    }

    #[test]
    fn each_part_has_its_own_and_the_first_gives_what_the_rest_asks_for() {
        let parts = cut(&whole(), &["late"]).unwrap();
        let [first, rest] = [&parts.first, &parts.rest].map(|bytes| Module::from_buffer(bytes).unwrap());
        // `early`, `shared`, `tabled`; `late`, `alone`.
        assert_eq!([local_functions(&first), local_functions(&rest)], [3, 2]);
        assert_eq!((first.data.iter().count(), rest.data.iter().count()), (1, 0));
        let names = |module: &Module| module.exports.iter().map(|e| e.name.clone()).collect::<BTreeSet<_>>();
        assert!(names(&first).contains("early") && !names(&first).contains("late"));
        assert_eq!(names(&rest), BTreeSet::from(["late".to_owned()]));
        let asked: Vec<_> = rest.imports.iter().map(|i| (i.module.as_str(), i.name.clone())).collect();
        assert!(asked.len() >= 2, "{asked:?}");
        assert!(asked.iter().all(|(from, name)| *from == FIRST && names(&first).contains(name)), "{asked:?}");
    }

    #[test]
    fn a_whole_is_left_whole_where_nothing_is_later() {
        let parts = cut(&whole(), &[]).unwrap();
        let rest = Module::from_buffer(&parts.rest).unwrap();
        assert_eq!((local_functions(&rest), rest.imports.iter().count()), (0, 0));
        assert!(cut(b"no wasm", &[]).is_err());
        assert!(cut(&whole(), &["later"]).is_err());
    }
}

//! The door in a Web Worker: three functions that take and give JSON text, as `act` and `ask` do everywhere.
//!
//! A refusal is thrown as its JSON. A panic is a bug: it ends the WebAssembly instance, and `fault` then says where it was,
//! so that the worker can answer with a refusal and start anew.

#![cfg(all(target_family = "wasm", target_os = "unknown"))]

use std::cell::RefCell;
use std::panic;

use layshaft_core::content::use_language;
use layshaft_core::error::{Code, Refusal};
use layshaft_door::{Bench, HostMessage};
use layshaft_storage::{Store, open_pool};
use wasm_bindgen::prelude::*;

thread_local! {
    static BENCH: RefCell<Option<Bench>> = const { RefCell::new(None) };
    static FAULT: RefCell<Option<String>> = const { RefCell::new(None) };
}

/// Opens the database `name` in a folder of the browser's private file system, or makes it. `fresh` are 16 random
/// hexadecimal digits that mark this device when the database is new. `content` is what the program brings along in another
/// language, as JSON; without it, or where it does not fit this program, it is English. It stays for as long as this instance
/// lives.
#[wasm_bindgen]
pub async fn open(directory: String, name: String, fresh: String, content: Option<String>) -> Result<(), JsValue> {
    panic::set_hook(Box::new(|report| FAULT.set(Some(report.to_string()))));
    let bench = open_bench(&directory, &name, &fresh, content.as_deref()).await.map_err(thrown)?;
    BENCH.set(Some(bench));
    Ok(())
}

async fn open_bench(directory: &str, name: &str, fresh: &str, content: Option<&str>) -> Result<Bench, Refusal> {
    let fresh = u64::from_str_radix(fresh, 16)
        .map_err(|_| Refusal::new(Code::BadRequest, HostMessage::DeviceMark { text: fresh.to_owned() }))?;
    if let Some(content) = content {
        // Texts of another version of the program, or damaged ones, must not keep the mechanic from the data: English stays.
        let _ = use_language(content);
    }
    open_pool(directory).await?;
    Bench::with_store(Store::open_named(name)?, fresh)
}

/// Does what the mechanic did.
#[wasm_bindgen]
pub fn act(call: &str) -> Result<String, JsValue> {
    with_bench(|bench| bench.act_json(call))
}

/// Answers a question.
#[wasm_bindgen]
pub fn ask(call: &str) -> Result<String, JsValue> {
    with_bench(|bench| bench.ask_json(call))
}

/// Where the program stopped, when it stopped at a bug of its own.
#[wasm_bindgen]
pub fn fault() -> Option<String> {
    FAULT.take()
}

fn with_bench(call: impl FnOnce(&mut Bench) -> Result<String, String>) -> Result<String, JsValue> {
    BENCH.with_borrow_mut(|bench| match bench {
        Some(bench) => call(bench).map_err(JsValue::from),
        None => Err(thrown(Refusal::new(Code::Storage, HostMessage::NotOpen))),
    })
}

fn thrown(refusal: Refusal) -> JsValue {
    JsValue::from(serde_json::to_string(&refusal).unwrap_or_default())
}

//! The folder for a web host, tried on a host: nginx with HTTPS in a network of the test's own, and a browser in it.

use std::process::Command;

use super::{folder, make};
use crate::command::{Outcome, program, run, succeeds};
use crate::measure::E2E;
use crate::{needs, web};

/// An address within the network of the test, which leads nowhere else.
const HOST: &str = "10.77.0.2";

/// A network that only its own programs see. It goes when the test ends.
struct Network(String);

impl Network {
    fn make() -> Outcome<Network> {
        let network = Network(format!("layshaft-{}", std::process::id()));
        run(program("ip").args(["netns", "add", &network.0]))?;
        run(network.inside("ip").args(["link", "set", "lo", "up"]))?;
        run(network.inside("ip").args(["addr", "add", &format!("{HOST}/32"), "dev", "lo"]))?;
        Ok(network)
    }

    fn inside(&self, name: &str) -> Command {
        let mut command = program("ip");
        command.args(["netns", "exec", &self.0, name]);
        command
    }
}

impl Drop for Network {
    fn drop(&mut self) {
        succeeds(program("ip").args(["netns", "del", &self.0]));
    }
}

/// The check of hosts against hosts that are wrong, then the walk.
pub fn test() -> Outcome {
    needs::node()?;
    run(program("node").args(["--test", "xtask/site/"]))?;
    needs::web_host()?;
    let chromium = needs::chromium()?;
    needs::npm_packages(E2E)?;
    if !web::dist().join("sw.js").is_file() {
        web::build()?;
    }
    make()?;
    let network = Network::make()?;
    let mut walk = network.inside("node");
    walk.arg(format!("{E2E}/site.mjs")).env("LAYSHAFT_SITE", folder());
    run(walk.env("LAYSHAFT_HOST", HOST).env("LAYSHAFT_CHROMIUM", chromium))
}

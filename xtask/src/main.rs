//! The project's own commands: `cargo xtask serve | test | build | look | figures | bench`.

fn main() {}

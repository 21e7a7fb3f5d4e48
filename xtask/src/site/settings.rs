//! Settings for file servers that are in common use: the same types and times as ours, written out in their own words. They name
//! no folder above the pages, so they hold under any path.

use super::rules::{ASK_AGAIN, EVERYWHERE, HASHED, KEEP, TYPES};

/// A file `_headers`, which several hosts of static pages read. Each rule is a path, then its headers, indented. They set the
/// types themselves; those that they may not know are named.
pub fn headers_file() -> String {
    let mut text = String::from("/*\n");
    for (name, value) in EVERYWHERE {
        text.push_str(&format!("  {name}: {value}\n"));
    }
    text.push_str(&format!("  Cache-Control: {ASK_AGAIN}\n"));
    text.push_str(&format!("/{HASHED}/*\n  ! Cache-Control\n  Cache-Control: {KEEP}\n"));
    for end in ["wasm", "webmanifest"] {
        text.push_str(&format!("/*.{end}\n  Content-Type: {}\n", type_of(end)));
    }
    text
}

/// A file `.htaccess` for Apache 2.4, with `mod_headers`, `mod_mime` and `mod_rewrite`. Compressed copies go to browsers that take them.
pub fn htaccess() -> String {
    let mut text = String::from("# Apache 2.4: needs `AllowOverride FileInfo` for this folder.\n");
    for (end, kind) in TYPES {
        let (kind, charset) = kind.split_once("; charset=").unwrap_or((kind, ""));
        text.push_str(&format!("AddType {kind} .{end}\n"));
        if !charset.is_empty() {
            text.push_str(&format!("AddCharset {charset} .{end}\n"));
        }
    }
    text.push_str("<IfModule mod_headers.c>\n");
    for (name, value) in EVERYWHERE {
        text.push_str(&format!("  Header set {name} \"{value}\"\n"));
    }
    text.push_str(&format!("  Header set Cache-Control \"{ASK_AGAIN}\"\n"));
    text.push_str(&format!(
        "  <If \"%{{REQUEST_URI}} =~ m#/{HASHED}/[^/]+$#\">\n    Header set Cache-Control \"{KEEP}\"\n  </If>\n</IfModule>\n"
    ));
    text.push_str("<IfModule mod_rewrite.c>\n  RewriteEngine On\n");
    for (coding, end) in [("br", "br"), ("gzip", "gz")] {
        text.push_str(&format!("  RewriteCond %{{HTTP:Accept-Encoding}} {coding}\n"));
        text.push_str(&format!("  RewriteCond %{{REQUEST_FILENAME}}.{end} -f\n"));
        text.push_str(&format!("  RewriteRule ^(.+)$ $1.{end} [E=coded:{coding},L]\n"));
    }
    text.push_str("</IfModule>\n");
    for (coding, end) in [("br", "br"), ("gzip", "gz")] {
        text.push_str(&format!("<FilesMatch \"\\.{end}$\">\n  RemoveType .{end}\n  AddEncoding {coding} .{end}\n"));
        text.push_str("  Header append Vary Accept-Encoding\n</FilesMatch>\n");
    }
    text
}

/// A file for nginx, to be included in its `server`, with this folder as `root`.
pub fn nginx() -> String {
    let mut text = String::from(
        "# nginx: inside `server { … }`, with this folder as `root`. HTTPS is needed: without it no browser installs the pages.\n",
    );
    text.push_str("types {\n");
    for (end, kind) in TYPES.iter().filter(|(end, _)| *end != "mjs") {
        let kind = kind.split(';').next().unwrap_or(kind);
        let ends = if *end == "js" { "js mjs" } else { end };
        text.push_str(&format!("  {kind} {ends};\n"));
    }
    text.push_str("}\ncharset utf-8;\ncharset_types text/css text/javascript text/plain;\ngzip_static on;\n");
    text.push_str("location ~ /(_headers|\\.htaccess|nginx\\.conf)$ { return 404; }\n");
    let headers = |rule: &str| {
        let everywhere = EVERYWHERE.iter().map(|(name, value)| format!("  add_header {name} \"{value}\";\n"));
        everywhere.chain([format!("  add_header Cache-Control \"{rule}\";\n")]).collect::<String>()
    };
    text.push_str(&format!("location ~ /{HASHED}/[^/]+$ {{\n{}}}\n", headers(KEEP)));
    text.push_str(&format!("location / {{\n{}}}\n", headers(ASK_AGAIN)));
    text
}

fn type_of(end: &str) -> &'static str {
    TYPES.iter().find(|(ends, _)| *ends == end).map_or("application/octet-stream", |(_, kind)| kind)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_setting_names_the_type_of_the_module_and_both_times() {
        for text in [headers_file(), htaccess(), nginx()] {
            for wanted in ["application/wasm", "application/manifest+json", KEEP, ASK_AGAIN, "nosniff"] {
                assert!(text.contains(wanted), "{wanted} is missing:\n{text}");
            }
        }
    }
}

//! Every name that a source file mentions: in a `use`, in a path, in an attribute, inside a macro.
//!
//! Limits: it reads what is written, so a path that a procedural macro would build is not seen. Documentation text is
//! not read either: a link may point up the house.

use proc_macro2::{Delimiter, TokenStream, TokenTree};
use syn::visit::{self, Visit};

/// A name as written, with the module in which it stands.
#[derive(Debug, Clone)]
pub struct Mention {
    pub line: usize,
    /// Path of the module that contains it, without `crate`.
    pub at: Vec<String>,
    pub segments: Vec<String>,
    /// It began with `::`, so it is a crate for certain.
    pub rooted: bool,
    pub kind: Kind,
}

#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Kind {
    Import {
        /// The name it gets here; nothing for a glob or `_`.
        bound: Option<String>,
        glob: bool,
        /// It has a visibility, so others can reach the thing through here.
        shown: bool,
    },
    Path,
    /// Inside a macro or an attribute, where a lone word may be anything.
    Token,
}

/// What one file holds, as far as the rules care.
#[derive(Debug, Default)]
pub struct Contents {
    pub mentions: Vec<Mention>,
    /// Modules written or declared here, with their line.
    pub modules: Vec<(usize, String)>,
    /// Ways to bring in source from elsewhere, which this check could not follow.
    pub smuggled: Vec<(usize, &'static str)>,
}

/// Reads a parsed file whose own module path is `at`.
pub fn read(file: &syn::File, at: &[String]) -> Contents {
    let mut reader = Reader { at: at.to_vec(), found: Contents::default() };
    reader.visit_file(file);
    reader.found
}

struct Reader {
    at: Vec<String>,
    found: Contents,
}

impl Reader {
    fn mention(&mut self, line: usize, segments: Vec<String>, rooted: bool, kind: Kind) {
        let at = self.at.clone();
        self.found.mentions.push(Mention { line, at, segments, rooted, kind });
    }

    fn import(&mut self, tree: &syn::UseTree, before: &[String], rooted: bool, shown: bool) {
        let with = |ident: &syn::Ident| {
            let mut all = before.to_vec();
            all.push(ident.to_string());
            all
        };
        match tree {
            syn::UseTree::Path(path) => self.import(&path.tree, &with(&path.ident), rooted, shown),
            syn::UseTree::Group(group) => {
                for item in &group.items {
                    self.import(item, before, rooted, shown);
                }
            }
            syn::UseTree::Glob(glob) => {
                let line = glob.star_token.spans[0].start().line;
                let kind = Kind::Import { bound: None, glob: true, shown };
                self.mention(line, before.to_vec(), rooted, kind);
            }
            syn::UseTree::Name(name) => {
                self.leaf(&name.ident, &name.ident, before, rooted, shown);
            }
            syn::UseTree::Rename(name) => {
                self.leaf(&name.ident, &name.rename, before, rooted, shown);
            }
        }
    }

    fn leaf(
        &mut self,
        ident: &syn::Ident,
        rename: &syn::Ident,
        before: &[String],
        rooted: bool,
        shown: bool,
    ) {
        let mut segments = before.to_vec();
        // `use a::{self}` names `a` itself; a lone `self` is this module.
        if ident != "self" || segments.is_empty() {
            segments.push(ident.to_string());
        }
        let renamed =
            if rename == "self" { before.last().cloned() } else { Some(rename.to_string()) };
        let bound = renamed.filter(|name| name != "_");
        let kind = Kind::Import { bound, glob: false, shown };
        self.mention(ident.span().start().line, segments, rooted, kind);
    }

    /// Reads the tokens of a macro. `before` is the path in front of a braced group, as in `use crate::{a, b}`.
    fn tokens(&mut self, stream: TokenStream, before: &[String]) {
        let trees: Vec<TokenTree> = stream.into_iter().collect();
        let mut next = 0;
        while next < trees.len() {
            match &trees[next] {
                TokenTree::Group(group) => {
                    self.tokens(group.stream(), &[]);
                    next += 1;
                }
                TokenTree::Ident(first) => {
                    let rooted =
                        before.is_empty() && next >= 2 && is_path_separator(&trees, next - 2);
                    let mut segments = before.to_vec();
                    segments.push(first.to_string());
                    next += 1;
                    while is_path_separator(&trees, next) {
                        match trees.get(next + 2) {
                            Some(TokenTree::Ident(ident)) => {
                                segments.push(ident.to_string());
                                next += 3;
                            }
                            Some(TokenTree::Group(group))
                                if group.delimiter() == Delimiter::Brace =>
                            {
                                self.tokens(group.stream(), &segments);
                                next += 3;
                            }
                            _ => next += 2,
                        }
                    }
                    self.mention(first.span().start().line, segments, rooted, Kind::Token);
                }
                TokenTree::Punct(_) | TokenTree::Literal(_) => next += 1,
            }
        }
    }

    /// A derive may take a path in quotes: `#[serde(with = "crate::units")]`.
    fn quoted_paths(&mut self, stream: TokenStream) {
        for tree in stream {
            match tree {
                TokenTree::Group(group) => self.quoted_paths(group.stream()),
                TokenTree::Literal(literal) => {
                    let line = literal.span().start().line;
                    let path = syn::parse_str::<syn::LitStr>(&literal.to_string())
                        .ok()
                        .and_then(|text| text.parse::<syn::Path>().ok());
                    if let Some(path) = path.filter(|path| path.segments.len() > 1) {
                        let rooted = path.leading_colon.is_some();
                        self.mention(line, words_of(&path), rooted, Kind::Token);
                    }
                }
                TokenTree::Ident(_) | TokenTree::Punct(_) => {}
            }
        }
    }
}

fn is_path_separator(trees: &[TokenTree], at: usize) -> bool {
    let colon = |index: usize| matches!(trees.get(index), Some(TokenTree::Punct(punct)) if punct.as_char() == ':');
    colon(at) && colon(at + 1)
}

fn words_of(path: &syn::Path) -> Vec<String> {
    path.segments.iter().map(|segment| segment.ident.to_string()).collect()
}

impl<'ast> Visit<'ast> for Reader {
    fn visit_item_mod(&mut self, item: &'ast syn::ItemMod) {
        let name = item.ident.to_string();
        self.found.modules.push((item.ident.span().start().line, name.clone()));
        self.at.push(name);
        visit::visit_item_mod(self, item);
        self.at.pop();
    }

    fn visit_item_use(&mut self, item: &'ast syn::ItemUse) {
        let shown = !matches!(item.vis, syn::Visibility::Inherited);
        self.import(&item.tree, &[], item.leading_colon.is_some(), shown);
    }

    fn visit_item_extern_crate(&mut self, item: &'ast syn::ItemExternCrate) {
        let line = item.ident.span().start().line;
        self.found.smuggled.push((line, "`extern crate` gives a crate a second name"));
    }

    /// `pub(crate)` and `pub(in …)` say who may look in, not what is used.
    fn visit_visibility(&mut self, _: &'ast syn::Visibility) {}

    fn visit_path(&mut self, path: &'ast syn::Path) {
        if let Some(first) = path.segments.first() {
            let line = first.ident.span().start().line;
            self.mention(line, words_of(path), path.leading_colon.is_some(), Kind::Path);
        }
        visit::visit_path(self, path);
    }

    fn visit_macro(&mut self, item: &'ast syn::Macro) {
        self.visit_path(&item.path);
        if item.path.segments.last().is_some_and(|last| last.ident == "include") {
            let line = item.path.segments[0].ident.span().start().line;
            self.found.smuggled.push((line, "`include!` brings in source from another place"));
        }
        self.tokens(item.tokens.clone(), &[]);
    }

    fn visit_attribute(&mut self, attribute: &'ast syn::Attribute) {
        let path = attribute.path();
        if path.is_ident("doc") {
            return;
        }
        if path.is_ident("path") {
            let line = path.segments[0].ident.span().start().line;
            self.found.smuggled.push((line, "`#[path]` puts a module in another place"));
        }
        self.visit_path(path);
        let tokens = match &attribute.meta {
            syn::Meta::Path(_) => return,
            syn::Meta::List(list) => list.tokens.clone(),
            syn::Meta::NameValue(pair) => quote_free_tokens(&pair.value),
        };
        self.tokens(tokens.clone(), &[]);
        self.quoted_paths(tokens);
    }
}

/// The literal of `#[name = "value"]`; no other form of value can hold a path.
fn quote_free_tokens(value: &syn::Expr) -> TokenStream {
    match value {
        syn::Expr::Lit(syn::ExprLit { lit: syn::Lit::Str(text), .. }) => {
            TokenStream::from(TokenTree::Literal(text.token()))
        }
        _ => TokenStream::new(),
    }
}

//! Reading Rust source as tokens, so that comments and strings are never mistaken for code.

use proc_macro2::{Delimiter, Group, LexError, TokenStream, TokenTree};

/// The tokens of a file.
pub fn tokens(text: &str) -> Result<Vec<TokenTree>, LexError> {
    Ok(text.parse::<TokenStream>()?.into_iter().collect())
}

/// The same tokens without the items that exist only in a test build.
pub fn without_tests(tokens: Vec<TokenTree>) -> Vec<TokenTree> {
    let mut kept = Vec::with_capacity(tokens.len());
    let mut rest = tokens.into_iter().peekable();
    while let Some(token) = rest.next() {
        if is_hash(&token) && rest.peek().is_some_and(is_test_attribute) {
            skip_item(&mut rest);
        } else if let TokenTree::Group(group) = token {
            kept.push(rebuilt(&group));
        } else {
            kept.push(token);
        }
    }
    kept
}

/// Whether a token opens an attribute, `#[...]` or `#![...]`.
pub fn is_hash(token: &TokenTree) -> bool {
    is_punct(token, '#')
}

/// Whether a token is this sign.
pub fn is_punct(token: &TokenTree, sign: char) -> bool {
    matches!(token, TokenTree::Punct(punct) if punct.as_char() == sign)
}

/// Whether a token is this word.
pub fn is_word(token: &TokenTree, word: &str) -> bool {
    matches!(token, TokenTree::Ident(ident) if ident == word)
}

/// The tokens inside a token that is a group with these brackets.
pub fn inside(token: &TokenTree, brackets: Delimiter) -> Option<Vec<TokenTree>> {
    match token {
        TokenTree::Group(group) if group.delimiter() == brackets => {
            Some(group.stream().into_iter().collect())
        }
        _ => None,
    }
}

/// The line a token starts on, counted from 1.
pub fn line(token: &TokenTree) -> usize {
    token.span().start().line
}

/// The content of a plain or raw string literal, with its escapes as they are written.
pub fn string_content(written: &str) -> Option<&str> {
    let opened = written
        .trim_start_matches(['b', 'c', 'r'])
        .trim_start_matches('#');
    let closed = opened.strip_prefix('"')?.trim_end_matches('#');
    closed.strip_suffix('"')
}

/// Whether a comment that starts with this mark, and gives a reason behind it, stands on a line
/// (counted from 1) or alone on the line above or below: the formatter moves a comment behind an
/// opening brace to the line below.
pub fn is_marked(lines: &[&str], line: usize, mark: &str) -> bool {
    let reason = |text: &&str| {
        text.split_once(mark)
            .is_some_and(|(_, why)| !why.trim().is_empty())
    };
    let alone = |text: &str| text.trim_start().starts_with(mark);
    let at = |line: usize| {
        line.checked_sub(1)
            .and_then(|index| lines.get(index))
            .filter(|text| reason(text))
    };
    at(line).is_some()
        || at(line - 1).is_some_and(|text| alone(text))
        || at(line + 1).is_some_and(|text| alone(text))
}

fn rebuilt(group: &Group) -> TokenTree {
    let kept = without_tests(group.stream().into_iter().collect());
    let mut new = Group::new(group.delimiter(), kept.into_iter().collect());
    new.set_span(group.span());
    TokenTree::Group(new)
}

/// `[cfg(test)]`, `[cfg(all(test, ...))]` or `[test]`.
fn is_test_attribute(token: &TokenTree) -> bool {
    let Some(words) = inside(token, Delimiter::Bracket) else {
        return false;
    };
    match words.as_slice() {
        [only] => is_word(only, "test"),
        [cfg, condition] if is_word(cfg, "cfg") => {
            inside(condition, Delimiter::Parenthesis).is_some_and(|parts| needs_test(&parts))
        }
        _ => false,
    }
}

fn needs_test(condition: &[TokenTree]) -> bool {
    match condition {
        [only] => is_word(only, "test"),
        [all, parts] if is_word(all, "all") => inside(parts, Delimiter::Parenthesis)
            .is_some_and(|parts| parts.iter().any(|part| is_word(part, "test"))),
        _ => false,
    }
}

/// Skips the rest of an attribute and the item it stands on: to its braces or its semicolon,
/// or, for a field or a variant, to its comma.
fn skip_item(rest: &mut std::iter::Peekable<impl Iterator<Item = TokenTree>>) {
    rest.next();
    let mut generics = 0_usize;
    let mut arrow = false;
    for token in rest.by_ref() {
        let ends = is_punct(&token, ';')
            || inside(&token, Delimiter::Brace).is_some()
            || (is_punct(&token, ',') && generics == 0);
        if ends {
            return;
        }
        if is_punct(&token, '<') {
            generics += 1;
        } else if is_punct(&token, '>') && !arrow {
            generics = generics.saturating_sub(1);
        }
        arrow = is_punct(&token, '-');
    }
}

#[cfg(test)]
mod tests;

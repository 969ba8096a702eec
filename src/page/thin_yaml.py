#!/usr/bin/env python3
# SPDX-License-Identifier: Apache-2.0
"""libyaml's macros, which its scanner and parser spell out some thousand times, as functions that are called:
the module is 20 kB smaller by that, 4 kB compressed. What they do is what the macros say.

Usage: thin_yaml.py libyaml/src; rewrites yaml_private.h and scanner.c.
"""
import pathlib
import sys

FUNCTION = "static __attribute__((noinline, unused)) "
AT = "struct { const yaml_char_t *pointer; } string = {at}; "

# Of a character at a place of a string: the macro, and what the function of the same name returns.
OF_A_PLACE = [
    ("IS_ALPHA_AT", AT + "return IS_ALPHA_AT(string, 0);"),
    ("IS_BREAK_AT", AT + "return IS_BREAK_AT(string, 0);"),
    ("IS_BREAKZ_AT", AT + "return IS_BREAKZ_AT(string, 0);"),
    ("IS_BLANKZ_AT", AT + "return IS_BLANKZ_AT(string, 0);"),
    ("WIDTH_AT", AT + "return WIDTH_AT(string, 0);")]
STRINGS = [(name, "int", "const yaml_char_t *at", body, "(string, offset)", "((string).pointer + (offset))")
           for name, body in OF_A_PLACE] + [
    ("COPY", "void", "yaml_char_t **to, yaml_char_t **from",
     "struct { yaml_char_t *pointer; } a = {*to}, b = {*from}; COPY(a, b); *to = a.pointer; *from = b.pointer;",
     "(a, b)", "(&(a).pointer, &(b).pointer)")]
MARKS = ", const yaml_mark_t *start, const yaml_mark_t *end"
TOKENS = [("TOKEN_INIT", "void", "yaml_token_t *token, yaml_token_type_t type" + MARKS,
           "TOKEN_INIT(*token, type, *start, *end);", "(token, type, start, end)",
           "(&(token), type, &(start), &(end))")]
EVENTS = [("EVENT_INIT", "void", "yaml_event_t *event, yaml_event_type_t type" + MARKS,
           "EVENT_INIT(*event, type, *start, *end);", "(event, type, start, end)",
           "(&(event), type, &(start), &(end))")]
PARSER = "yaml_parser_t *parser"
READING = [
    ("CACHE", "int", PARSER + ", size_t length", "return CACHE(parser, length);", "(parser, length)", "(parser, length)"),
    ("SKIP", "void", PARSER, "SKIP(parser);", "(parser)", "(parser)"),
    ("SKIP_LINE", "void", PARSER, "(void)(SKIP_LINE(parser));", "(parser)", "(parser)"),
    ("READ", "int", PARSER + ", yaml_string_t *string", "return READ(parser, *string);", "(parser, string)",
     "(parser, &(string))"),
    ("READ_LINE", "int", PARSER + ", yaml_string_t *string", "return READ_LINE(parser, *string);",
     "(parser, string)", "(parser, &(string))")]


def functions(rows):
    return "".join("%s%s call_%s(%s) { %s }\n#undef %s\n#define %s%s call_%s%s\n" % (
        FUNCTION, kind, name, takes, body, name, name, macro, name, call)
        for name, kind, takes, body, macro, call in rows)


def put(path, where, rows, after=False):
    """The functions before, or after, the only place where the text stands."""
    text = path.read_text(encoding="utf-8")
    if text.count(where) != 1:
        sys.exit("%s: not once: %s: another version of libyaml" % (path.name, where))
    path.write_text(text.replace(where, where + functions(rows) if after else functions(rows) + where), encoding="utf-8")


def main(folder):
    header = folder / "yaml_private.h"
    put(header, "/*\n * Token initializers.\n */", STRINGS)
    put(header, "     (token).end_mark = (token_end_mark))\n", TOKENS, after=True)
    put(header, "     (event).end_mark = (event_end_mark))\n", EVENTS, after=True)
    put(folder / "scanner.c", "/*\n * Public API declarations.\n */", READING)


main(pathlib.Path(sys.argv[1]))

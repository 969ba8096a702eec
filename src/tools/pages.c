/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Writes the man pages and the completions of three shells from the tables of commands, flags, keys
 * and examples: run by the build, not installed. `pages man1|man5|bash|zsh|fish`, or a command's
 * name.
 */
#include <stdio.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/examples.h"
#include "model/shape.h"

static struct ts_text *out;

/* Adds text for roff: hyphens as typed, backslashes shown, no line that starts a macro. */
static void roff(const char *text)
{
	if (*text == '.' || *text == '\'')
		ts_text_put(out, "\\&");
	for (; *text; text++) {
		if (*text == '-')
			ts_text_put(out, "\\-");
		else if (*text == '\\')
			ts_text_put(out, "\\e");
		else if (*text == '"')
			ts_text_put(out, "\\(dq");
		else
			ts_text_add(out, text, 1);
	}
}

static void paragraph(const char *head, const char *takes, const char *says)
{
	ts_text_put(out, ".TP\n.B ");
	roff(head);
	if (takes) {
		ts_text_put(out, " \\fI");
		roff(takes);
		ts_text_put(out, "\\fR");
	}
	ts_text_put(out, "\n");
	roff(says);
	ts_text_put(out, "\n");
}

static void man_option(void *state, const struct option_view *option)
{
	char names[64];

	(void)state;
	snprintf(names, sizeof names, "%s%s%s", option->short_name ? option->short_name : "",
		option->short_name ? ", " : "", option->name);
	paragraph(names, option->takes, option->says);
}

static void man_command_option(void *state, const struct option_view *option)
{
	const char **before = state;

	if (option->group != OPTION_FLAG)
		return;
	ts_text_put(out, *before);
	ts_text_put(out, "\\fB");
	roff(option->name);
	ts_text_put(out, "\\fR");
	*before = ", ";
}

static void man_reading(void *state, const struct option_view *option)
{
	if ((int)option->group == *(int *)state)
		man_option(NULL, option);
}

static void man_commands(void)
{
	ts_text_put(out, ".SH COMMANDS\n");
	for (size_t i = 0; command_at(i); i++) {
		const char *before = "\nTakes ";

		paragraph(command_at(i)->usage, NULL, command_at(i)->says);
		out->len--;
		ts_text_put(out, ".");
		options_each(command_at(i), man_command_option, &before);
		ts_text_puts(out, ". Formats: ", command_at(i)->formats, ".\n", NULL);
	}
}

struct once {
	const char *name;
	bool found;
};

static void find_name(void *state, const struct option_view *option)
{
	struct once *once = state;

	once->found |= strcmp(option->name, once->name) == 0;
}

/* A flag where the first of the commands that take it stands. */
static void man_flag_once(void *state, const struct option_view *option)
{
	struct once once = {option->name, false};

	if (option->group != OPTION_FLAG)
		return;
	for (size_t i = 0; i < *(const size_t *)state; i++)
		options_each(command_at(i), find_name, &once);
	if (!once.found)
		man_option(NULL, option);
}

static void man1(void)
{
	static const char *const codes[] = {"the answer is yes, or was given",
		"the answer is no, or cannot be given from what is known", "a wrong call or file",
		"the system failed"};
	int reading = OPTION_READING, trait = OPTION_TRAIT;

	ts_text_put(out,
		".TH TAPSHOAL 1 \"" TS_DATE "\" \"tapshoal " TS_VERSION "\" \"User Commands\"\n"
		".SH NAME\ntapshoal \\- matches freshwater fish to measured water\n"
		".SH SYNOPSIS\n.B tapshoal\n.I command\n.RI [ flag ...]\n"
		".SH DESCRIPTION\nReads what was measured of a water, says what it means, holds it "
		"against a sourced catalogue of what each species lives in, and answers: which "
		"fish suit it, who can live together, what is wrong with a plan, and how the "
		"minerals are changed safely where somebody has decided to. It never proposes to "
		"dose a pH: pH follows from the minerals.\n");
	man_commands();
	ts_text_put(out, ".SH FLAGS\n");
	for (size_t i = 0; command_at(i); i++)
		options_each(command_at(i), man_flag_once, &i);
	ts_text_put(out, ".SH READINGS\nWhere no file is given, what was measured is written as "
			 "flags. Ions need a unit; GH and KH without one are dH.\n");
	options_each(command_named("rank"), man_reading, &reading);
	ts_text_put(out, ".SH WORDS OF A RECORD\nTaken by find.\n");
	options_each(command_named("find"), man_reading, &trait);
	ts_text_put(out, ".SH EXIT STATUS\n");
	for (size_t i = 0; i < sizeof codes / sizeof *codes; i++) {
		char digit[2] = {(char)('0' + i), '\0'};

		paragraph(digit, NULL, codes[i]);
	}
	ts_text_put(out, ".SH ENVIRONMENT\n");
	paragraph("NO_COLOR", NULL, "no colour on a terminal, where set and not empty");
	paragraph("TAPSHOAL_NO_CONFIG", NULL,
		"neither the kept tap nor the file of settings is looked at");
	for (size_t i = 0; i < settings_shape.count; i++) {
		char name[32];

		settings_variable(&settings_shape.fields[i], name);
		paragraph(name, NULL, settings_shape.fields[i].says);
	}
	paragraph("XDG_CONFIG_HOME, XDG_DATA_HOME, XDG_DATA_DIRS", NULL,
		"where the kept tap, the settings and further folders of records are looked for");
	ts_text_put(out, ".SH FILES\n");
	paragraph("share/doc/tapshoal", NULL,
		"below the prefix: docs/guide.md, a guide from the beginning, to which answers "
		"point; the example files it names; schemas");
	paragraph("~/.config/tapshoal/config.yaml", NULL,
		"the settings, a line each (tapshoal config; keys in tapshoal-formats(5))");
	paragraph("share/tapshoal/shipped/species", NULL, "below the prefix: the catalogue");
	ts_text_put(out,
		".SH CAUTIONS\nWater is one question; room, company, feeding and care are "
		"others. Local law comes first, a vet decides about sick animals, and nothing "
		"is ever released into nature.\n.SH SEE ALSO\n");
	for (size_t i = 0; command_at(i); i++) {
		ts_text_put(out, ".BR ");
		roff("tapshoal-");
		roff(command_at(i)->name);
		ts_text_put(out, " (1),\n");
	}
	ts_text_put(out, ".BR tapshoal\\-formats (5)\n");
}

static void man_examples(const char *command)
{
	const char *before = "";

	ts_text_put(out, ".SH EXAMPLES\n");
	for (size_t i = 0; i < EXAMPLES; i++) {
		if (strcmp(examples[i].command, command) != 0)
			continue;
		ts_text_put(out, before);
		before = ".PP\n";
		roff(examples[i].says);
		ts_text_put(out, ":\n.PP\n.RS 4\n.nf\n.B ");
		roff(examples[i].call);
		ts_text_put(out, "\n.fi\n.RE\n");
	}
}

static void man_keys(const char *title, const struct ts_shape *shape)
{
	ts_text_puts(out, ".SH ", title, "\n", NULL);
	for (size_t i = 0; i < shape->count; i++) {
		const struct ts_field *f = &shape->fields[i];

		ts_text_put(out, ".TP\n.B ");
		roff(f->key);
		ts_text_put(out, f->need == TS_REQUIRED ? " \\fR(needed)\\fR\n" : "\n");
		roff(f->says);
		if (f->words) {
			ts_text_put(out, ": ");
			for (size_t w = 0; f->words[w]; w++) {
				ts_text_put(out, w ? ", " : "");
				roff(f->words[w]);
			}
		}
		ts_text_put(out, "\n");
	}
}

/* A page of a command: what it takes in full, and calls that work as they stand. */
static void man_of(const struct command *command)
{
	int reading = OPTION_READING, trait = OPTION_TRAIT, flag = OPTION_FLAG;

	ts_text_put(out, ".TH TAPSHOAL-");
	for (const char *c = command->name; *c; c++) {
		const char upper = (char)(*c >= 'a' && *c <= 'z' ? *c - 0x20 : *c);

		ts_text_add(out, &upper, 1);
	}
	ts_text_put(out, " 1 \"" TS_DATE "\" \"tapshoal " TS_VERSION "\" \"User Commands\"\n"
			 ".SH NAME\n");
	roff("tapshoal-");
	roff(command->name);
	ts_text_put(out, " \\- ");
	roff(command->says);
	ts_text_put(out, "\n.SH SYNOPSIS\n.B tapshoal\n");
	roff(command->usage);
	ts_text_put(out, "\n.RI [ flag ...]\n.SH FLAGS\n");
	options_each(command, man_reading, &flag);
	if (command->readings) {
		ts_text_put(out, ".SH READINGS\nGH and KH without a unit are dH.\n");
		options_each(command, man_reading, &reading);
	}
	if (command->traits) {
		ts_text_put(out, ".SH WORDS OF A RECORD\n");
		options_each(command, man_reading, &trait);
	}
	ts_text_puts(out, ".SH FORMATS\nOf \\-\\-format: ", command->formats, ".\n", NULL);
	if (command->file) {
		ts_text_put(out, ".SH FILE\nWhat no flag takes stands in a file:\n.PP\n.nf\n");
		roff(command->file);
		ts_text_put(out, ".fi\n");
	}
	if (command->run == command_config)
		man_keys("SETTINGS", &settings_shape);
	man_examples(command->name);
	ts_text_put(out, ".SH SEE ALSO\n.BR tapshoal (1),\n.BR tapshoal\\-formats (5)\n");
}

static void man5(void)
{
	ts_text_put(out,
		".TH TAPSHOAL-FORMATS 5 \"" TS_DATE "\" \"tapshoal " TS_VERSION
		"\" \"File Formats\"\n"
		".SH NAME\ntapshoal\\-formats \\- files that tapshoal reads\n"
		".SH DESCRIPTION\nFiles are YAML in UTF\\-8, one document each, read strictly: "
		"unknown or doubled keys, unknown words, anchors and tags are errors, all "
		"reported with file, line, column, path and remedy. A quantity is a number and a "
		"unit: 14 dH, 12..16 dH, 14 +\\- 1 dH, <0.05 mg/L.\n");
	man_keys("WATER", &ts_shape_water);
	man_keys("READING", &ts_shape_reading);
	man_keys("TANK", &ts_shape_tank);
	man_keys("PLAN", &ts_shape_plan);
	man_keys("SPECIES", &ts_shape_species);
	man_keys("SETTINGS (config.yaml)", &settings_shape);
	ts_text_put(out, ".SH SEE ALSO\n.BR tapshoal (1)\n");
}

/*
 * Completions: each shell hands its words to `tapshoal complete`, which knows the rows, the folders
 * and the kept things of its caller, and gets lines: values, and what they are behind a tab. They
 * come out of files of anybody: in each shell they are values, and never words that it reads again.
 */
static void bash(void)
{
	ts_text_put(out,
		"# bash completion of tapshoal\n"
		"_tapshoal() {\n"
		"\tlocal line value word quote='' glue=''\n"
		"\tlocal -a words=()\n"
		"\t# '@' and '=' part words for this shell, and for nobody else\n"
		"\tfor word in \"${COMP_WORDS[@]:1:COMP_CWORD}\"; do\n"
		"\t\tif [[ $word == = && ${#words[@]} -gt 0 ]]; then words[-1]+== glue=1\n"
		"\t\telif [ -n \"$glue\" ]; then words[-1]+=$word glue=''\n"
		"\t\telse words+=(\"$word\"); fi\n"
		"\t\t[[ $word == @ ]] && glue=1\n"
		"\tdone\n"
		"\tword=${words[-1]} words[-1]=''\n"
		"\t[[ $word == [\\\"\\']* ]] && quote=${word:0:1} word=${word:1}\n"
		"\twords[-1]=${word//\\\\/}\n"
		"\tword=${words[-1]}\n"
		"\t[[ $word == --*=* ]] && word=${word#*=}\n"
		"\tCOMPREPLY=()\n"
		"\twhile IFS= read -r line; do\n"
		"\t\tvalue=${line%%$'\\t'*}\n"
		"\t\tcase $value in\n"
		"\t\t:files) compopt -o filenames 2>/dev/null\n"
		"\t\t\tmapfile -t -O ${#COMPREPLY[@]} COMPREPLY < <(compgen -f -- \"$word\") ;;\n"
		"\t\t:folders) compopt -o filenames 2>/dev/null\n"
		"\t\t\tmapfile -t -O ${#COMPREPLY[@]} COMPREPLY < <(compgen -d -- \"$word\") ;;\n"
		"\t\t*[\\$\\`\\\"\\'\\\\\\!]* | '') ;;\n"
		"\t\t*) [[ ${value,,} == \"${word,,}\"* ]] || continue\n"
		"\t\t\t[ -n \"$quote\" ] || printf -v value %q \"$value\"\n"
		"\t\t\tCOMPREPLY+=(\"$value\") ;;\n"
		"\t\tesac\n"
		"\tdone < <(tapshoal complete -- \"${words[@]}\" 2>/dev/null)\n"
		"}\n"
		"complete -F _tapshoal tapshoal\n");
}

static void zsh(void)
{
	ts_text_put(out,
		"#compdef tapshoal\n"
		"_tapshoal() {\n"
		"\tlocal line value says typed=\"${(Q)PREFIX}\" files='' folders=''\n"
		"\tlocal -a asked values shown\n"
		"\tasked=(\"${(@Q)words[2,CURRENT-1]}\" \"$typed\")\n"
		"\tfor line in \"${(@f)$(tapshoal complete -- \"${(@)asked}\" 2>/dev/null)}\"; do\n"
		"\t\tvalue=${line%%$'\\t'*} says=''\n"
		"\t\t[[ $line == *$'\\t'* ]] && says=\"  ${line#*$'\\t'}\"\n"
		"\t\tcase $value in\n"
		"\t\t:files) files=1 ;;\n"
		"\t\t:folders) folders=1 ;;\n"
		"\t\t?*) values+=(\"$value\") shown+=(\"$value$says\") ;;\n"
		"\t\tesac\n"
		"\tdone\n"
		"\t[[ $PREFIX == --*=* ]] && compset -P '*='\n"
		"\t(( ${#values} )) && compadd -l -d shown -a -- values\n"
		"\t[[ -n $files ]] && _files\n"
		"\t[[ -n $folders ]] && _files -/\n"
		"\treturn 0\n"
		"}\n"
		"_tapshoal \"$@\"\n");
}

static void fish(void)
{
	ts_text_put(out, "# fish completion of tapshoal\n"
			 "function __tapshoal_complete\n"
			 "\tset -l asked (commandline -opc)\n"
			 "\tset -e asked[1]\n"
			 "\tset -l word (commandline -ct | string trim --left --chars '\"\\'' | "
			 "string replace --all '\\\\' '')\n"
			 "\tset -l flag (string match --regex '^--[^=]*=' -- \"$word\")\n"
			 "\tfor line in (tapshoal complete -- $asked \"$word\" 2>/dev/null)\n"
			 "\t\tswitch $line\n"
			 "\t\t\tcase :files\n"
			 "\t\t\t\t__fish_complete_path (string replace --regex '^--[^=]*=' '' -- "
			 "\"$word\") | string replace --regex '^' \"$flag\"\n"
			 "\t\t\tcase :folders\n"
			 "\t\t\t\t__fish_complete_directories (string replace --regex '^--[^=]*=' "
			 "'' -- \"$word\") | string replace --regex '^' \"$flag\"\n"
			 "\t\t\tcase '*'\n"
			 "\t\t\t\tstring join '' -- \"$flag\" $line\n"
			 "\t\tend\n"
			 "\tend\n"
			 "end\n"
			 "complete -c tapshoal -f -a '(__tapshoal_complete)'\n");
}

/* Breaks lines of running text at a blank, since readers of the source see 80 columns. */
static void break_lines(struct ts_text *text)
{
	size_t start = 0, blank = 0;

	for (size_t i = 0; i < text->len; i++) {
		char after = text->at[i + 1];

		if (text->at[i] == '\n') {
			start = i + 1;
			blank = 0;
		} else if (text->at[i] == ' ' && after != '.' && after != '\'' && after != ' ') {
			blank = i;
		}
		if (i - start > 76 && blank && text->at[start] != '.') {
			text->at[blank] = '\n';
			start = blank + 1;
			blank = 0;
		}
	}
}

int main(int argc, char **argv)
{
	static const struct {
		const char *name;
		void (*write)(void);
	} pages[] = {{"man1", man1}, {"man5", man5}, {"bash", bash}, {"zsh", zsh}, {"fish", fish}};
	struct ts_text text;
	bool fine = false;

	ts_text_open(&text, NULL);
	out = &text;
	for (size_t i = 0; argc == 2 && i < sizeof pages / sizeof *pages; i++) {
		if (strcmp(pages[i].name, argv[1]) != 0)
			continue;
		pages[i].write();
		if (strncmp(argv[1], "man", 3) == 0 && text.len)
			break_lines(&text);
		fine = !text.failed && fputs(ts_text_get(&text), stdout) >= 0;
	}
	if (argc == 2 && !fine && command_named(argv[1])) {
		man_of(command_named(argv[1]));
		break_lines(&text);
		fine = !text.failed && fputs(ts_text_get(&text), stdout) >= 0;
	}
	ts_text_drop(&text);
	return fine ? 0 : 2;
}

/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the walk of failed allocations runs: a line of arguments for every command, the files these
 * name, and the files that may be written. All figures are invented.
 */
#ifndef TS_TESTS_CLI_FAULTS_ROWS_H
#define TS_TESTS_CLI_FAULTS_ROWS_H

struct fault_row {
	const char *command, *arguments; /* '~' stands for a blank inside an argument */
	int exit; /* without a failure; a row that gives an answer is run in every format */
	const char *formats; /* only in these; NULL: in all of the command */
	int streams;         /* whole lines of the answer may be out before a failure */
};

struct fault_file {
	const char *path, *before;
};

#define READ " --GH 8 --KH 5 --pH 7.2 --temperature 25"

/* clang-format off */
static const struct fault_row fault_rows[] = {
	{"", "", 2, NULL, 0},
	{"", "--help", 0, NULL, 0},
	{"ranc", "", 2, NULL, 0},
	{"rank", "--help", 0, NULL, 0},
	{"rank", "--gehalt 9", 2, NULL, 0},
	{"arrive", "--shop shop.yaml --hours 20~h --with Exempla~mollis --conductivity 640~uS/cm" READ, 1, NULL, 0},
	{"ask-back", "tank --page https://example.org/p.html", 0, NULL, 0},
	{"ask-back", "", 0, NULL, 0},
	{"check", "plan.yaml", 1, NULL, 0},
	{"check", "running.yaml --today 2026-05-10", 0, NULL, 0},
	{"check", "broken.yaml", 2, NULL, 0},
	{"complete", "-- why Exempla~m", 0, NULL, 0},
	{"complete", "-- rank -f c", 0, NULL, 0},
	{"complete", "-- propose -t @", 0, NULL, 0},
	{"config", "", 0, NULL, 0},
	{"config", "names de", 0, NULL, 0},
	{"config", "names xx", 2, NULL, 0},
	{"drift", "running.yaml --today 2026-05-10", 0, NULL, 0},
	{"due", "running.yaml -w tap.yaml --today 2026-05-10", 0, NULL, 0},
	{"due", "running.yaml tank.yaml --today 2026-05-10", 1, NULL, 0},
	{"find", "^exempla.*a$ --swims middle --GH 8", 0, NULL, 0},
	{"find", "--fixed mollis --only-catalogue --catalogue records", 0, NULL, 0},
	{"find", "(", 2, NULL, 0},
	{"init", "../out", 0, NULL, 0},
	{"keep", "tap.yaml --name kitchen", 0, NULL, 0},
	{"keep", "--GH 8 --softened", 0, NULL, 0},
	{"keep", "", 0, NULL, 0},
	{"lint", "records", 1, NULL, 0},
	{"lint", "records/exempla-mollis.yaml tap.yaml tank.yaml plan.yaml", 1, NULL, 0},
	{"lint", "broken.yaml", 2, NULL, 0},
	{"mix", "tap.yaml=30L pure=70L", 0, NULL, 0},
	{"log", "running.yaml --today 2026-05-10", 0, NULL, 0},
	{"note", "../out/noted.yaml GH=15 pH=7.4 --on 2026-05-09 --today 2026-05-10", 0, NULL, 0},
	{"note", "../out/noted.yaml --from notebook.csv --today 2026-05-10", 0, NULL, 0},
	{"page", "--from page.html --own --catalogue records tap.yaml tank.yaml running.yaml", 0, NULL, 0},
	{"page", "--from tap.yaml", 2, NULL, 0},
	{"propose", "-t tank.yaml --plan-out ../out/plan.yaml --lists 2" READ, 0, NULL, 0},
	{"propose", "-t tank.yaml --why Exempla~media --write-model ../out/model.lp" READ, 0, NULL, 0},
	{"rank", "--origin wild --aim breeding --quiet" READ, 0, NULL, 0},
	{"rank", "--practice practice.yaml --catalogue records" READ, 0, NULL, 0},
	{"rank", "-w tap.yaml --season summer -t tank.yaml", 0, NULL, 0},
	{"rank", "", 0, NULL, 0},
	{"rank", "--batch waters.csv --temperature 25", 2, "text csv json", 1},
	{"read", "report.txt", 1, NULL, 0},
	{"read", "- --supply-zone North", 0, NULL, 0},
	{"remake", "running.yaml --to GH=6..9,KH=4..6 --today 2026-05-10", 0, NULL, 0},
	{"remake", "--for Exempla~mollis --volume 100~L --have mineral-free" READ, 0, NULL, 0},
	{"titrate", "tap.yaml", 0, NULL, 0},
	{"titrate", "tap.yaml --nightly --towards 7", 0, NULL, 0},
	{"water", "tap.yaml --against shop.yaml", 0, NULL, 0},
	{"what-if", "", 0, NULL, 0},
	{"what-if", "power-cut running.yaml --today 2026-05-10", 0, NULL, 0},
	{"what-if", "move running.yaml --GH 2 --KH 2 --hours 5~h --today 2026-05-10", 0, NULL, 0},
	{"why", "Exempla~mollis Exempla~media" READ, 0, NULL, 0},
	{"why", "Exempla~mollis Exempla~lata -w tap.yaml -w shop.yaml --temperature 25", 0, "text json csv html brief", 0},
	{"why", "Exempla~mollis --batch waters.csv --temperature 25", 2, NULL, 0},
	{"why", "Exempla~mollis --batch waters.csv --temperature 25", 2, "lines csv", 1},
	{"why", "Exempla~dura" READ, 2, NULL, 0},
};

static const struct fault_file fault_inputs[] = {
	{"tap.yaml", "name: tap\nkind: tap\ndisinfectant: chlorine\nreadings:\n"
		"  - {season: summer, date: 2026-05-01, method: laboratory, GH: 14 dH, KH: 9 dH, pH: 7.8, Ca: 80 mg/L, NO3: 5 mg/L NO3}\n"
		"  - {season: winter, GH: 8 dH, KH: 5 dH}\n"},
	{"shop.yaml", "name: the shop\nreadings:\n"
		"  - {GH: 4 dH, KH: 3 dH, pH: 6.9, conductivity: 220 uS/cm}\n"},
	{"tank.yaml", "length: 120 cm\nwidth: 50 cm\nheight: 50 cm\ntemperature: 25 C\n"
		"plants: some\ncover: yes\nfeeding: ordinary\nfilter: mature\n"},
	{"plan.yaml", "name: a plan\nwater: tap.yaml\ntank: tank.yaml\n"
		"stock:\n  - {species: Exempla mollis, count: 3}\n  - {species: nobody knows, count: 2}\n"},
	{"running.yaml", "name: running\nwater: {readings: [{GH: 14, KH: 9, NO3: 10 mg/L NO3}]}\n"
		"tank: {volume: 200 L, temperature: 25 C, water_change: 30 % every 7 days, feeding: 0.5 g/day,"
		" plants: none, cover: yes, filter: mature, readings: [{date: 2026-05-09, GH: 14, KH: 8, pH: 7.8,"
		" ammonia: 0 mg/L N, NO2: 0 mg/L, NO3: 20 mg/L NO3}]}\n"
		"stock:\n  - {species: Exempla lata, count: 8, since: 2025-01-01}\n"},
	{"page.html", "<html><script type=\"text/plain\" id=\"own\">{\"old\": 1}</script></html>\n"},
	{"notebook.csv", "date,GH (dH),KH (dH)\n2026-05-01,15,8\n2026-05-02,14,8\n"},
	{"waters.csv", "name,GH,KH,pH\nfirst,8 dH,5 dH,7.2\nsecond,8 dX,5,7.2\n\"third\",1 dH,0.5 dH,6\n"},
	{"broken.yaml", "nme: a plan\nwater: {readings: [{GH: 14 dX}, {pH: 99}, {date: 2026-02-30}]}\n"
		"tank: {volume: 0.1 L, plants: sme}\nstock:\n  - {species: &a x, count: 1.5}\n  - [1]\n"},
	{"records/exempla-mollis.yaml", "species: Exempla mollis\nname_source: memory\nsynonyms: [Olda mollis]\n"
		"common:\n  en: [soft exemplar]\nfamily: Exemplidae\nkind: fish\nsold: often\nhome_water: clear-soft\n"
		"adult_length: 4 cm TL\ngreatest_length: 3 cm TL\nlives_years: 3..5\nbody: fusiform\nwater:\n"
		"  pH: {tolerated: 5.5..7.2, preferred: 6.0..7.0, source: [practice, practice]}\n"
		"  GH: {tolerated: 0..10 dH, preferred: 1..6 dH, source: [practice, nowhere2020]}\n"
		"  temperature: {tolerated: 22..28 C, preferred: 23..26 C, source: [practice, practice]}\n"
		"group: {least: 6, comfortable: 10, sexes: any}\nswims: middle\nto_own_kind: ignores\n"
		"to_others: ignores\ngape: nibbler\nhunts: fry\npreys_on: []\ndiet: omnivore\neats: [small invertebrates]\nfeeding: dry\n"
		"fins: short\nnips: no\nneeds: {flow: gentle, light: any, cover: no, activity: ordinary}\n"
		"habits: []\ntakes_change: fairly\ncautions: []\nsources: [invented]\n"},
	{"practice.yaml", "doubt.gh.practice: 1\n"},
	{"report.txt", "Zone: North\nTotal hardness 12 dH\nNitrate 4 mg/l NO3\npH 7.2 - 7.9\n"
		"Nitrate 5 mg/l\nMagnesium hardness 3 dH\nAlkalinity 200 mg/l CaCO3\n"
		"Zone: South\nTotal hardness 18 dH\n"},
	{"records/sources/invented.yaml", "title: invented\n"},
};

/* Files that a row may write: each is the old one or the whole new one. The answer comes first. */
static const struct fault_file watched[] = {
	{"../out/answer", "old\n"},
	{"../out/plan.yaml", "old\n"},
	{"../out/tank.yaml", "old\n"}, /* init leaves what stands there */
	{"../out/water.yaml", "old\n"},
	{"../out/model.lp", "old\n"},
	{"../out/noted.yaml", "name: noted\nkind: tap\nreadings:\n  - {date: 2026-03-01, GH: 14 dH, pH: 7.6}\n"},
	{"../config/tapshoal/config.yaml", "lines: 30\nnames: fr # and\n"},
	{"../config/tapshoal/tap.yaml", "name: old\nkept: 2026-05-01\nreadings: [{GH: 8, KH: 5, pH: 7.2, temperature: 25}]\n"},
};
/* clang-format on */
#define FAULT_ROWS (sizeof fault_rows / sizeof *fault_rows)
#define FAULT_INPUTS (sizeof fault_inputs / sizeof *fault_inputs)
#define WATCHED (sizeof watched / sizeof *watched)

#endif

/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The system in memory. A path is a name whose "." and ".." are taken out; a folder is there as
 * long as something is in it.
 */
#include "system/memory.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>

#define PATH_MOST 1024

/* "a/./b/../c" as "a/c"; what is too long is no path of ours. */
static bool plain(const char *path, char ret[PATH_MOST])
{
	size_t len = 0;

	if (strlen(path) >= PATH_MOST)
		return false;
	if (*path == '/')
		ret[len++] = '/';
	while (*path) {
		size_t part = strcspn(path, "/");
		bool up = part == 2 && strncmp(path, "..", 2) == 0;

		if (up) {
			while (len && ret[len - 1] != '/')
				len--;
			len -= len > 1;
		} else if (part && !(part == 1 && *path == '.')) {
			if (len && ret[len - 1] != '/')
				ret[len++] = '/';
			memcpy(ret + len, path, part);
			len += part;
		}
		path += part + (path[part] == '/');
	}
	ret[len] = '\0';
	return true;
}

static bool fails(struct ts_memory *m, enum ts_memory_step step, int *ret)
{
	m->faults[step].calls++;
	*ret = m->faults[step].after && m->faults[step].calls >= m->faults[step].after
		       ? m->faults[step].why
		       : 0;
	return *ret;
}

static struct ts_memory_file *find(const struct ts_memory *m, const char *path)
{
	char name[PATH_MOST];

	if (!plain(path, name) || !*name)
		return NULL;
	for (size_t i = 0; i < m->count; i++) {
		if (strcmp(m->files[i].path, name) == 0)
			return &m->files[i];
	}
	return NULL;
}

/* Does anything stand below it? */
static bool is_folder(const struct ts_memory *m, const char *path)
{
	char name[PATH_MOST];
	size_t len;

	if (!plain(path, name))
		return false;
	len = strlen(name);
	for (size_t i = 0; i < m->count; i++) {
		const char *own = m->files[i].path;

		if (!len ? *own && *own != '/'
			 : strncmp(own, name, len) == 0 &&
					(own[len] == '/' || name[len - 1] == '/'))
			return true;
	}
	return false;
}

static int look(void *state, const char *path, struct ts_seen *ret)
{
	struct ts_memory *m = state;
	const struct ts_memory_file *file = find(m, path);
	int why;

	if (fails(m, TS_MEMORY_LOOK, &why))
		return why;
	if (!file && !is_folder(m, path))
		return ENOENT;
	*ret = (struct ts_seen){.entry = file ? file->entry : TS_ENTRY_FOLDER,
		.device = 1,
		.inode = file ? file->inode : 0,
		.size = file ? file->bytes.len : 0,
		.modified_ns = file ? file->modified_ns : 0};
	return 0;
}

/* The first file below the folder that shares this part of its name. */
static bool is_first(const struct ts_memory *m, size_t index, size_t len)
{
	for (size_t i = 0; i < index; i++) {
		if (strncmp(m->files[i].path, m->files[index].path, len) == 0 &&
			(m->files[i].path[len] == '/' || !m->files[i].path[len]))
			return false;
	}
	return true;
}

static int list(void *state, const char *folder, bool (*each)(void *to, const char *name), void *to)
{
	struct ts_memory *m = state;
	char name[PATH_MOST], entry[PATH_MOST];
	size_t len;
	int why;

	if (fails(m, TS_MEMORY_LIST, &why))
		return why;
	if (!is_folder(m, folder) || !plain(folder, name))
		return find(m, folder) ? ENOTDIR : ENOENT;
	len = strlen(name);
	if (len && name[len - 1] != '/')
		name[len++] = '/';
	for (size_t i = 0; i < m->count; i++) {
		const char *own = m->files[i].path;
		size_t part;

		if (strncmp(own, name, len) != 0 || !*own)
			continue;
		part = strcspn(own + len, "/");
		if (!is_first(m, i, len + part))
			continue;
		memcpy(entry, own + len, part);
		entry[part] = '\0';
		if (!each(to, entry))
			break;
	}
	return 0;
}

static int make_folder(void *state, const char *path)
{
	int why;

	(void)path;
	return fails(state, TS_MEMORY_FOLDER, &why) ? why : 0;
}

static int open_file(void *state, const char *path, enum ts_opening how, int *ret)
{
	struct ts_memory *m = state;
	struct ts_memory_file *file = find(m, path);
	int why;

	if (fails(m, TS_MEMORY_OPEN, &why))
		return why;
	if (!file)
		return is_folder(m, path) ? EISDIR : ENOENT;
	if (how != TS_OPEN_ANY && file->entry != TS_ENTRY_FILE)
		return TS_WHY_NOT_ORDINARY;
	for (*ret = 0; *ret < TS_MEMORY_OPEN_MOST && m->open[*ret].used;)
		++*ret;
	if (*ret == TS_MEMORY_OPEN_MOST)
		return EMFILE;
	m->open[*ret].used = true;
	m->open[*ret].file = (size_t)(file - m->files);
	m->open[*ret].at = 0;
	file->known = true;
	if (how == TS_OPEN_REWRITE) {
		m->over_inode = file->inode;
		m->over_ns = file->modified_ns;
	}
	return 0;
}

static int read_file(void *state, int handle, char *into, size_t room, size_t *ret_len)
{
	struct ts_memory *m = state;
	const struct ts_text *bytes = &m->files[m->open[handle].file].bytes;
	size_t left = bytes->len - m->open[handle].at;
	int why;

	*ret_len = 0;
	if (fails(m, TS_MEMORY_READ, &why))
		return why;
	*ret_len = left < room ? left : room;
	if (*ret_len)
		memcpy(into, bytes->at + m->open[handle].at, *ret_len);
	m->open[handle].at += *ret_len;
	return 0;
}

static void close_file(void *state, int handle)
{
	((struct ts_memory *)state)->open[handle].used = false;
}

static int create(void *state, const char *path, int over, int *ret)
{
	struct ts_memory *m = state;
	const struct ts_memory_file *file = path ? find(m, path) : NULL;
	int why;

	if (fails(m, TS_MEMORY_CREATE, &why))
		return why;
	if (path && !file && is_folder(m, path))
		return EISDIR;
	if (file && over < 0 && file->known)
		return TS_WHY_INPUT;
	for (*ret = 0; *ret < TS_MEMORY_OPEN_MOST && m->writers[*ret].used;)
		++*ret;
	if (*ret == TS_MEMORY_OPEN_MOST)
		return EMFILE;
	m->writers[*ret].path = path ? strdup(path) : NULL;
	if (path && !m->writers[*ret].path)
		return ENOMEM;
	m->writers[*ret].used = true;
	m->writers[*ret].over = over;
	ts_text_open(&m->writers[*ret].bytes, NULL);
	return 0;
}

static size_t held(const struct ts_memory *m)
{
	size_t sum = 0;

	for (size_t i = 0; i < m->count; i++)
		sum += m->files[i].bytes.len;
	for (size_t i = 0; i < TS_MEMORY_OPEN_MOST; i++)
		sum += m->writers[i].used && m->writers[i].path ? m->writers[i].bytes.len : 0;
	return sum;
}

static int write_file(void *state, int handle, const char *bytes, size_t len)
{
	struct ts_memory *m = state;
	struct ts_text *to = m->writers[handle].path ? &m->writers[handle].bytes : &m->out;
	int why;

	if (fails(m, TS_MEMORY_WRITE, &why))
		return why;
	if (m->writers[handle].path && m->disk && held(m) + len > m->disk)
		return ENOSPC;
	ts_text_add(to, bytes, len);
	return to->failed ? ENOMEM : 0;
}

static int finish(void *state, int handle, bool keep)
{
	struct ts_memory *m = state;
	char *path = m->writers[handle].path;
	struct ts_text *bytes = &m->writers[handle].bytes;
	const struct ts_memory_file *file = path ? find(m, path) : NULL;
	int why = 0;

	if (keep && !fails(m, TS_MEMORY_FINISH, &why) && path) {
		if (m->writers[handle].over >= 0 ? !file || file->inode != m->over_inode ||
							   file->modified_ns != m->over_ns
						 : file && file->known)
			why = m->writers[handle].over >= 0 ? TS_WHY_CHANGED : TS_WHY_INPUT;
		else if (!ts_memory_put(m, path, ts_text_get(bytes), bytes->len))
			why = ENOMEM;
		else
			find(m, path)->known = true;
	}
	ts_text_drop(bytes);
	free(path);
	m->writers[handle].used = false;
	return why;
}

/* A file is either whole or not there: nothing is ever left. */
static bool left_over(void *state, const char *path, char *ret, size_t room)
{
	(void)state;
	(void)path;
	(void)ret;
	(void)room;
	return false;
}

static const char *variable(void *state, const char *name)
{
	const struct ts_memory *m = state;

	for (const char *const *v = m->variables; v && *v; v += 2) {
		if (strcmp(v[0], name) == 0)
			return v[1];
	}
	return NULL;
}

static bool today(void *state, char ret[TS_DAY_ROOM])
{
	const struct ts_memory *m = state;

	if (!m->day || strlen(m->day) != TS_DAY_ROOM - 1)
		return false;
	memcpy(ret, m->day, TS_DAY_ROOM);
	return true;
}

static bool program(void *state, char *ret, size_t room)
{
	const struct ts_memory *m = state;

	if (!m->folder || strlen(m->folder) >= room)
		return false;
	memcpy(ret, m->folder, strlen(m->folder) + 1);
	return true;
}

static bool paged(void *state, const char *text, size_t len)
{
	(void)state;
	(void)text;
	(void)len;
	return false;
}

static void terminal(void *state, bool error, struct ts_terminal *ret)
{
	(void)error;
	*ret = ((const struct ts_memory *)state)->screen;
}

void ts_memory_open(struct ts_memory *memory)
{
	*memory = (struct ts_memory){.system = {.state = memory,
					     .look = look,
					     .list = list,
					     .make_folder = make_folder,
					     .open = open_file,
					     .read = read_file,
					     .close = close_file,
					     .create = create,
					     .write = write_file,
					     .finish = finish,
					     .left_over = left_over,
					     .variable = variable,
					     .today = today,
					     .program = program,
					     .terminal = terminal,
					     .paged = paged,
					     .together = ts_system_alone}};
	ts_text_open(&memory->out, NULL);
}

void ts_memory_close(struct ts_memory *memory)
{
	for (size_t i = 0; i < memory->count; i++) {
		free(memory->files[i].path);
		ts_text_drop(&memory->files[i].bytes);
	}
	free(memory->files);
	for (int i = 0; i < TS_MEMORY_OPEN_MOST; i++) {
		if (memory->writers[i].used)
			finish(memory, i, false);
	}
	ts_text_drop(&memory->out);
	*memory = (struct ts_memory){0};
}

/* A free place, or a new one. */
static struct ts_memory_file *place(struct ts_memory *m)
{
	for (size_t i = 0; i < m->count; i++) {
		if (!*m->files[i].path)
			return &m->files[i];
	}
	if (m->count == m->room) {
		size_t room = m->room ? 2 * m->room : 16;
		struct ts_memory_file *files = realloc(m->files, room * sizeof *files);

		if (!files)
			return NULL;
		m->files = files;
		m->room = room;
	}
	m->files[m->count] = (struct ts_memory_file){.path = strdup("")};
	if (!m->files[m->count].path)
		return NULL;
	ts_text_open(&m->files[m->count].bytes, NULL);
	return &m->files[m->count++];
}

static struct ts_memory_file *add(struct ts_memory *m, const char *path)
{
	char *own = strdup(path);
	struct ts_memory_file *file = own ? place(m) : NULL;

	if (!file) {
		free(own);
		return NULL;
	}
	free(file->path);
	file->path = own;
	file->inode = ++m->next_inode;
	return file;
}

bool ts_memory_put(struct ts_memory *memory, const char *path, const char *bytes, size_t len)
{
	char name[PATH_MOST];
	struct ts_memory_file *file = find(memory, path);

	if (!file && plain(path, name) && *name)
		file = add(memory, name);
	if (!file)
		return false;
	ts_text_clear(&file->bytes);
	ts_text_add(&file->bytes, bytes, len);
	file->entry = TS_ENTRY_FILE;
	file->modified_ns = ++memory->clock;
	file->known = false;
	return !file->bytes.failed;
}

bool ts_memory_put_other(struct ts_memory *memory, const char *path)
{
	bool fine = ts_memory_put(memory, path, "", 0);

	if (fine)
		find(memory, path)->entry = TS_ENTRY_OTHER;
	return fine;
}

void ts_memory_remove(struct ts_memory *memory, const char *path)
{
	struct ts_memory_file *file = find(memory, path);

	if (!file)
		return;
	*file->path = '\0';
	ts_text_clear(&file->bytes);
}

const char *ts_memory_get(const struct ts_memory *memory, const char *path)
{
	const struct ts_memory_file *file = find(memory, path);

	return file ? ts_text_get(&file->bytes) : NULL;
}

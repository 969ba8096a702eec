/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Whose a file is. A file that replaces another one must be as much its owner's, its group's and
 * everybody's as that one was; and nobody may lead us to a place of theirs by a link.
 */
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#ifdef __linux__
#include <sys/xattr.h>
#endif

#include "system/machine.h"

/* Links that follow one another at the most; the kernel's own bound. */
#define LINKS_MOST 40
#define ATTRIBUTES_MOST 65536

bool ts_machine_foreign(const char *path, const struct stat *entry)
{
	char folder[TS_PATH_MOST];
	const char *slash = strrchr(path, '/');
	size_t len = slash ? (size_t)(slash - path) : 0;
	struct stat info;

	if (len >= sizeof folder)
		return true;
	memcpy(folder, path, len);
	folder[len] = '\0';
	if (stat(len ? folder : slash ? "/" : ".", &info) != 0)
		return true;
	return (info.st_mode & S_ISVTX) && (info.st_mode & S_IWOTH) && entry->st_uid != geteuid() &&
	       entry->st_uid != info.st_uid;
}

/* Puts the file that a link names in its place: beside the link, unless it says from the root. */
static int follow(char target[TS_PATH_MOST])
{
	char link[TS_PATH_MOST], joined[TS_PATH_MOST];
	const char *slash = strrchr(target, '/');
	ssize_t len = readlink(target, link, sizeof link - 1);
	int folder;

	if (len < 0)
		return errno;
	link[len] = '\0';
	folder = link[0] == '/' || !slash ? 0 : (int)(slash - target) + 1;
	if (snprintf(joined, sizeof joined, "%.*s%s", folder, target, link) >= (int)sizeof joined)
		return ENAMETOOLONG;
	memcpy(target, joined, sizeof joined);
	return 0;
}

int ts_machine_resolve(const char *path, char target[TS_PATH_MOST])
{
	struct stat info;

	if (snprintf(target, TS_PATH_MOST, "%s", path) >= TS_PATH_MOST)
		return ENAMETOOLONG;
	for (int links = 0; lstat(target, &info) == 0 && S_ISLNK(info.st_mode); links++) {
		int why = links == LINKS_MOST                 ? ELOOP
			  : ts_machine_foreign(target, &info) ? TS_WHY_FOREIGN
							      : follow(target);

		if (why)
			return why;
	}
	return 0;
}

/* Access lists are attributes too. Those of security modules are theirs to set. */
static bool take_attributes(int file, const char *target)
{
#ifdef __linux__
	char names[ATTRIBUTES_MOST], value[ATTRIBUTES_MOST];
	ssize_t len = listxattr(target, names, sizeof names);
	bool fine = len >= 0 || errno == EOPNOTSUPP;

	for (const char *name = names; fine && name < names + len; name += strlen(name) + 1) {
		ssize_t got = getxattr(target, name, value, sizeof value);

		fine = got >= 0 && fsetxattr(file, name, value, (size_t)got, 0) == 0;
		fine |= strncmp(name, "security.", 9) == 0;
	}
	return fine;
#else
	(void)file;
	(void)target;
	return true;
#endif
}

bool ts_machine_take_rights(int file, const char *target, const struct stat *old)
{
	struct stat now;

	if (old->st_nlink > 1 || fstat(file, &now) != 0)
		return false;
	if ((now.st_uid != old->st_uid || now.st_gid != old->st_gid) &&
		fchown(file, now.st_uid == old->st_uid ? (uid_t)-1 : old->st_uid, old->st_gid) != 0)
		return false;
	return take_attributes(file, target) && fchmod(file, old->st_mode & 07777) == 0 &&
	       fstat(file, &now) == 0 && now.st_mode == old->st_mode && now.st_uid == old->st_uid &&
	       now.st_gid == old->st_gid;
}

static int copy(int from, int to)
{
	char piece[16384];
	off_t at = 0;
	ssize_t got;

	while ((got = pread(from, piece, sizeof piece, at)) != 0) {
		if (got < 0 && errno != EINTR)
			return errno;
		for (ssize_t done = 0; done < got;) {
			ssize_t put = pwrite(to, piece + done, (size_t)(got - done), at + done);

			if (put < 0 && errno != EINTR)
				return errno;
			done += put > 0 ? put : 0;
		}
		at += got > 0 ? got : 0;
	}
	return ftruncate(to, at) == 0 ? 0 : errno;
}

/* Room for all of it first: a full disk must be met before the first byte is replaced. */
static int make_room(int file, off_t size, off_t old)
{
	int why = size > old ? posix_fallocate(file, old, size - old) : 0;

	if (why == 0 || why == EOPNOTSUPP || why == EINVAL)
		return 0;
	if (ftruncate(file, old) != 0)
		return errno;
	return why;
}

int ts_machine_fill(int from, const char *target, const struct stat *old)
{
	int to = open(target, O_WRONLY | O_CLOEXEC | O_NOFOLLOW | O_NOCTTY);
	struct stat info, made;
	int why = 0;

	if (to < 0)
		return errno;
	info.st_mode = 0;
	if (fstat(to, &info) != 0 || fstat(from, &made) != 0)
		why = errno;
	else if (info.st_ino != old->st_ino || info.st_dev != old->st_dev)
		why = TS_WHY_CHANGED;
	if (!why)
		why = make_room(to, made.st_size, info.st_size);
	if (!why)
		why = copy(from, to);
	if (!why && fsync(to) != 0)
		why = errno;
	if (info.st_mode & (S_ISUID | S_ISGID))
		(void)!fchmod(to, info.st_mode & 07777); /* writing took them away */
	if (close(to) != 0 && !why)
		why = errno;
	return why;
}

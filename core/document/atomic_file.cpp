#include "core/document/atomic_file.h"

#include <cerrno>
#include <chrono>
#include <cstdint>
#include <fstream>
#include <optional>
#include <system_error>
#include <thread>
#include <utility>

#ifndef _WIN32
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>
#endif

namespace inchwright {
namespace {

namespace fs = std::filesystem;

Error troubleWith(const fs::path& file, std::string_view doing, const std::string& reason) {
  return Error{ErrorCode::fileTrouble, "can't " + std::string(doing) + ": " + reason,
               file.string()};
}

Error tooLarge(const fs::path& file, std::size_t most) {
  return Error{ErrorCode::tooLarge,
               "larger than " + std::to_string(most / (1024 * 1024)) + " MB: not read",
               file.string()};
}

std::string systemReason() {
  return systemWords(errno);
}

/// The file a chain of symbolic links ends at; it need not exist.
Result<fs::path> targetOf(const fs::path& file) {
  constexpr int kMostLinks = 40;
  fs::path target = file;
  for (int i = 0; i < kMostLinks; ++i) {
    std::error_code fault;
    if (!fs::is_symlink(fs::symlink_status(target, fault))) return target;
    const fs::path link = fs::read_symlink(target, fault);
    if (fault) return troubleWith(file, "follow the link", fault.message());
    target = link.is_absolute() ? link : target.parent_path() / link;
  }
  return troubleWith(file, "follow the link", "the links go round in a circle");
}

fs::path savingNameOf(const fs::path& target) {
  fs::path name = ".";
  name += target.filename();
  name += ".saving";
  return target.parent_path() / name;
}

#ifndef _WIN32

/// A file descriptor that closes itself.
class Handle {
 public:
  explicit Handle(int descriptor) : descriptor_(descriptor) {}
  Handle(Handle&& other) noexcept : descriptor_(std::exchange(other.descriptor_, -1)) {}
  Handle& operator=(Handle&&) = delete;
  ~Handle() {
    if (descriptor_ >= 0) ::close(descriptor_);
  }
  int get() const { return descriptor_; }
  bool open() const { return descriptor_ >= 0; }

 private:
  int descriptor_;
};

/// Whether the name still leads to the open file: another saver may have renamed it away.
bool isStill(const Handle& handle, const fs::path& name) {
  struct stat opened {};
  struct stat named {};
  return ::fstat(handle.get(), &opened) == 0 && ::lstat(name.c_str(), &named) == 0 &&
         opened.st_dev == named.st_dev && opened.st_ino == named.st_ino;
}

/// A plain file of our own that has no other name: nothing somebody else laid in the way.
bool isOurs(const Handle& handle) {
  struct stat opened {};
  return ::fstat(handle.get(), &opened) == 0 && S_ISREG(opened.st_mode) && opened.st_nlink == 1 &&
         opened.st_uid == ::geteuid();
}

/// Opens and locks the file to write to. A lock dies with its process, so what a killed save left
/// behind is free.
Result<Handle> openSaving(const fs::path& saving, const fs::path& file) {
  constexpr int kTries = 1000;
  constexpr std::chrono::milliseconds kPause(5);
  for (int i = 0; i < kTries; ++i) {
    Handle handle(::open(saving.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW | O_NONBLOCK,
                         S_IRUSR | S_IWUSR | S_IRGRP | S_IWGRP | S_IROTH | S_IWOTH));
    if (!handle.open()) return troubleWith(file, "write beside it", systemReason());
    if (::flock(handle.get(), LOCK_EX | LOCK_NB) == 0) {
      if (!isStill(handle, saving)) continue;
      if (isOurs(handle)) return handle;
      return troubleWith(file, "save", "`" + saving.filename().string() + "` is in the way");
    }
    if (errno != EWOULDBLOCK && errno != EINTR) {
      return troubleWith(file, "lock the new content", systemReason());
    }
    std::this_thread::sleep_for(kPause);
  }
  return troubleWith(file, "save", "another save of it is still under way");
}

bool writeAll(const Handle& handle, std::string_view content) {
  if (::ftruncate(handle.get(), 0) != 0) return false;
  while (!content.empty()) {
    const ssize_t written = ::write(handle.get(), content.data(), content.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return false;
    content.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

/// The permissions the file has now; empty when there is none. Refuses what may not be replaced.
Result<std::optional<mode_t>> oldMode(const fs::path& target, const fs::path& file) {
  struct stat old {};
  if (::stat(target.c_str(), &old) != 0) {
    if (errno == ENOENT) return std::optional<mode_t>();
    return troubleWith(file, "look at it", systemReason());
  }
  if (!S_ISREG(old.st_mode)) return troubleWith(file, "save", "it is no plain file");
  if (::access(target.c_str(), W_OK) != 0) return troubleWith(file, "save", systemReason());
  return std::optional<mode_t>(old.st_mode & 07777);
}

Result<Done> flushFolder(const fs::path& target, const fs::path& file) {
  const fs::path folder = target.has_parent_path() ? target.parent_path() : fs::path(".");
  const Handle handle(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  // A folder that may not be read can't be flushed; some file systems know no such thing.
  if (!handle.open() || ::fsync(handle.get()) == 0 || errno == EINVAL) return Done{};
  return troubleWith(file, "be sure that the saved file is on the disk", systemReason());
}

Result<Done> replaceTarget(const fs::path& target, std::string_view content, const fs::path& file) {
  const Result<std::optional<mode_t>> mode = oldMode(target, file);
  if (!mode) return mode.error();
  const fs::path saving = savingNameOf(target);
  const Result<Handle> handle = openSaving(saving, file);
  if (!handle) return handle.error();
  const bool written = writeAll(*handle, content) &&
                       (!*mode || ::fchmod(handle->get(), **mode) == 0) &&
                       ::fsync(handle->get()) == 0 && ::rename(saving.c_str(), target.c_str()) == 0;
  if (written) return flushFolder(target, file);
  const std::string reason = systemReason();
  ::unlink(saving.c_str());
  return troubleWith(file, "save", reason);
}

#else

Result<Done> replaceTarget(const fs::path& target, std::string_view content, const fs::path& file) {
  const fs::path saving = savingNameOf(target);
  std::error_code fault;
  {
    std::ofstream out(saving, std::ios::binary | std::ios::trunc);
    out.write(content.data(), static_cast<std::streamsize>(content.size()));
    out.close();
    if (!out) {
      fs::remove(saving, fault);
      return troubleWith(file, "save", "the disk took not all of it");
    }
  }
  fs::rename(saving, target, fault);
  if (!fault) return Done{};
  const std::string reason = fault.message();
  fs::remove(saving, fault);
  return troubleWith(file, "save", reason);
}

#endif

}  // namespace

std::string systemWords(int error) {
  switch (error) {
    case ENOSPC:
#ifdef EDQUOT
    case EDQUOT:
#endif
      return "the disk is full";
    case EROFS:
      return "the disk can only be read";
    default:
      return std::generic_category().message(error);
  }
}

Result<Done> replaceFile(const fs::path& file, std::string_view content) {
  if (!file.has_filename()) return troubleWith(file, "save", "it is no name of a file");
  const Result<fs::path> target = targetOf(file);
  if (!target) return target.error();
  return replaceTarget(*target, content, file);
}

#ifndef _WIN32

Result<std::string> readWholeFile(const fs::path& file, std::size_t most) {
  // Opened without waiting and looked at through the open handle, so that a pipe laid in its place
  // can neither hold this up nor slip in between.
  const Handle handle(::open(file.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY));
  if (!handle.open()) {
    if (errno == ENOENT) return troubleWith(file, "read", "there is no such file");
    return troubleWith(file, "read", systemReason());
  }
  struct stat there {};
  if (::fstat(handle.get(), &there) != 0) return troubleWith(file, "read", systemReason());
  if (!S_ISREG(there.st_mode)) return troubleWith(file, "read", "it is no plain file");
  const auto size = static_cast<std::uintmax_t>(there.st_size);
  if (size > most) return tooLarge(file, most);
  std::string content(static_cast<std::size_t>(size), '\0');
  std::size_t read = 0;
  while (read < content.size()) {
    const ssize_t more = ::read(handle.get(), content.data() + read, content.size() - read);
    if (more < 0 && errno == EINTR) continue;
    if (more < 0) return troubleWith(file, "read", systemReason());
    if (more == 0) break;
    read += static_cast<std::size_t>(more);
  }
  content.resize(read);
  return content;
}

#else

Result<std::string> readWholeFile(const fs::path& file, std::size_t most) {
  std::error_code fault;
  const fs::file_status status = fs::status(file, fault);
  if (status.type() == fs::file_type::not_found) {
    return troubleWith(file, "read", "there is no such file");
  }
  if (fault) return troubleWith(file, "read", fault.message());
  if (!fs::is_regular_file(status)) return troubleWith(file, "read", "it is no plain file");
  const auto size = fs::file_size(file, fault);
  if (fault) return troubleWith(file, "read", fault.message());
  if (size > most) return tooLarge(file, most);
  std::ifstream in(file, std::ios::binary);
  std::string content(static_cast<std::size_t>(size), '\0');
  in.read(content.data(), static_cast<std::streamsize>(size));
  if (!in.is_open() || in.bad()) return troubleWith(file, "read", systemReason());
  content.resize(static_cast<std::size_t>(in.gcount()));
  return content;
}

#endif

}  // namespace inchwright

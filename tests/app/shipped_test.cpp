// What is shipped is hard to misuse: places chosen anew at each start, nothing writable that is executed, no table of
// addresses to overwrite. Read from the files themselves (ELF: Tool Interface Standard 1.2; dynamic flags: gABI).
#include <elf.h>
#include <gtest/gtest.h>

#include <cstring>
#include <filesystem>
#include <fstream>
#include <string>

namespace burrow {
namespace {

class Elf {
 public:
  explicit Elf(const std::string& path) {
    std::error_code none;
    const auto size = std::filesystem::file_size(path, none);
    if (none) return;
    bytes_.resize(size);  // at once: letter by letter a checked build takes minutes
    std::ifstream(path, std::ios::binary).read(bytes_.data(), static_cast<std::streamsize>(size));
  }
  template <class T>
  [[nodiscard]] T at(std::size_t offset) const {
    T value{};
    if (offset + sizeof value <= bytes_.size()) std::memcpy(&value, bytes_.data() + offset, sizeof value);
    return value;
  }
  [[nodiscard]] Elf64_Ehdr header() const { return at<Elf64_Ehdr>(0); }
  template <class Visit>
  void segments(Visit visit) const {
    const Elf64_Ehdr head = header();
    for (int i = 0; i < head.e_phnum; ++i)
      visit(at<Elf64_Phdr>(head.e_phoff + static_cast<std::size_t>(i) * head.e_phentsize));
  }
  [[nodiscard]] Elf64_Xword flags(Elf64_Sxword tag) const {
    Elf64_Xword found = 0;
    segments([&](const Elf64_Phdr& segment) {
      if (segment.p_type != PT_DYNAMIC) return;
      for (std::size_t k = 0; k < segment.p_filesz / sizeof(Elf64_Dyn); ++k)
        if (const auto entry = at<Elf64_Dyn>(segment.p_offset + k * sizeof(Elf64_Dyn)); entry.d_tag == tag)
          found = entry.d_un.d_val;
    });
    return found;
  }
  [[nodiscard]] bool holds(const std::string& text) const { return bytes_.find(text) != std::string::npos; }

 private:
  std::string bytes_;
};

std::string beside(const char* name) {
  return (std::filesystem::path(BURROW_PROGRAM).parent_path() / "../lib/burrowline" / name).string();
}

TEST(Shipped, ProgramAndLibrary_AreHardened) {
  for (const std::string& path :
       {std::string(BURROW_PROGRAM), beside("burrowline-readers.so"), beside("burrowline-reader")}) {
    const Elf elf(path);
    ASSERT_EQ(std::memcmp(elf.header().e_ident, ELFMAG, SELFMAG), 0) << path;
    EXPECT_EQ(elf.header().e_type, ET_DYN) << path << ": placed anew at each start";
    bool relro = false, stack = false;
    elf.segments([&](const Elf64_Phdr& segment) {
      relro = relro || segment.p_type == PT_GNU_RELRO;
      if (segment.p_type == PT_GNU_STACK) {
        stack = true;
        EXPECT_EQ(segment.p_flags & PF_X, 0U) << path;
      }
      if (segment.p_type == PT_LOAD) {
        EXPECT_FALSE((segment.p_flags & PF_X) != 0 && (segment.p_flags & PF_W) != 0) << path;
      }
    });
    EXPECT_TRUE(relro && stack) << path;
    EXPECT_TRUE((elf.flags(DT_FLAGS) & DF_BIND_NOW) != 0 || (elf.flags(DT_FLAGS_1) & DF_1_NOW) != 0) << path;
    EXPECT_TRUE(elf.holds("__stack_chk_fail")) << path;
  }
  for (const std::string& path : {std::string(BURROW_PROGRAM), beside("burrowline-reader")})
    EXPECT_NE(Elf(path).flags(DT_FLAGS_1) & DF_1_PIE, 0U) << path;
}

}  // namespace
}  // namespace burrow

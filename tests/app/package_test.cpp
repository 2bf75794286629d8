// What a desktop reads of the package, by the tools that Debian has for it.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/command_run.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

const std::string package = BURROW_SOURCE_DIR "/resources/package";

TEST(Package, DesktopEntry_IsValid) {
  const Ran ran = run_shell("desktop-file-validate '" + package + "/burrowline.desktop'");
  EXPECT_EQ(ran.code, 0) << ran.out;
  EXPECT_EQ(ran.out, "");
}

TEST(Package, Metainfo_IsValid) {
  const Ran ran = run_shell("appstreamcli validate --no-net '" + package + "/burrowline.metainfo.xml'");
  EXPECT_EQ(ran.code, 0) << ran.out;
}

// The type is found by its ending, and by what stands in a file of another name; it is JSON to who knows no better.
TEST(Package, MimeType_IsFound) {
  const Folder folder;
  std::filesystem::create_directories(folder.path("mime/packages"));
  std::filesystem::copy_file(package + "/burrowline-mime.xml", folder.path("mime/packages/burrowline.xml"));
  const Ran made = run_shell("update-mime-database '" + folder.path("mime") + "'");
  ASSERT_EQ(made.code, 0) << made.out;
  const std::string type = "application/x-burrowline-crossing+json";
  EXPECT_THAT(folder.read("mime/globs2"), HasSubstr(type + ":*.crossing"));
  EXPECT_THAT(folder.read("mime/subclasses"), HasSubstr(type + " application/json"));
  EXPECT_THAT(folder.read("mime/magic"), HasSubstr(type));
  EXPECT_TRUE(std::filesystem::exists(folder.path("mime/application/x-burrowline-crossing+json.xml")));
}

// The same name in all four places, or a double click opens nothing.
TEST(Package, Names_AreTheSameEverywhere) {
  const auto text = [](const std::string& name) {
    std::ostringstream all;
    all << std::ifstream(package + "/" + name).rdbuf();
    return all.str();
  };
  const std::string type = "application/x-burrowline-crossing+json";
  EXPECT_THAT(text("burrowline.desktop"), HasSubstr("MimeType=" + type + ";"));
  EXPECT_THAT(text("burrowline.metainfo.xml"), HasSubstr("<mediatype>" + type + "</mediatype>"));
  EXPECT_THAT(text("burrowline-mime.xml"), HasSubstr("type=\"" + type + "\""));
  EXPECT_TRUE(std::filesystem::exists(package + "/application-x-burrowline-crossing+json.svg"));
  EXPECT_THAT(text("burrowline.desktop"), HasSubstr("Icon=burrowline\n"));
  EXPECT_TRUE(std::filesystem::exists(package + "/burrowline.svg"));
}

TEST(Package, ManPage_HasNoWarnings) {
  const Ran ran = run_shell("LC_ALL=C.UTF-8 groff -man -Tutf8 -ww -K utf8 -z '" + package + "/burrowline.1'");
  EXPECT_EQ(ran.code, 0) << ran.out;
  EXPECT_EQ(ran.out, "");
}

}  // namespace
}  // namespace burrow::test

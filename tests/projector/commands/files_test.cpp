#include "projector/commands/files.h"

#include <gtest/gtest.h>

#ifdef __unix__
#include <sys/resource.h>
#endif

#include <csignal>
#include <filesystem>
#include <functional>

namespace cowlcast::projector {
namespace {

namespace fs = std::filesystem;

class Files : public ::testing::Test {
 protected:
  void SetUp() override {
    folder =
        fs::temp_directory_path() /
        ("cowlcast-files-" + std::string(::testing::UnitTest::GetInstance()->current_test_info()->name()));
    fs::remove_all(folder);
    fs::create_directories(folder);
  }
  void TearDown() override { fs::remove_all(folder); }
  fs::path folder;
};

std::string message_of(const std::function<void()>& act) {
  try {
    act();
  } catch (const FileError& error) {
    return error.what();
  }
  return "";
}

TEST_F(Files, ComeBackAsWritten) {
  const std::string bytes("a\0b\r\n\xff", 6);
  write_file(folder / "x", bytes);
  EXPECT_EQ(read_file(folder / "x", "a file"), bytes);
  write_file(folder / "x", "");
  EXPECT_EQ(read_file(folder / "x", "a file"), "");
  EXPECT_EQ(std::distance(fs::directory_iterator(folder), {}), 1) << "nothing else is left behind";
}

TEST_F(Files, MissingOnesAreNamedWithWhatIsWanted) {
  const std::string message = message_of([&] { read_file(folder / "no.json", "a table file"); });
  EXPECT_NE(message.find("no.json"), std::string::npos);
  EXPECT_NE(message.find("a table file"), std::string::npos);
  EXPECT_NE(message_of([&] { read_file(folder, "a table file"); }).find("is a folder"), std::string::npos);
}

TEST_F(Files, AreNotWrittenWhereThereIsNoFolder) {
  const std::string message = message_of([&] { write_file(folder / "deep" / "x", "1"); });
  EXPECT_NE(message.find("there is no folder"), std::string::npos);
  EXPECT_NE(message_of([&] { write_file(folder, "1"); }).find("it is a folder"), std::string::npos);
}

#ifdef __unix__
/// No file may grow beyond some bytes while this lives, which is how a full disk looks to a program.
class SmallDisk {
 public:
  explicit SmallDisk(rlim_t bytes) {
    getrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, SIG_IGN);
    const rlimit small{bytes, before_.rlim_max};
    setrlimit(RLIMIT_FSIZE, &small);
  }
  ~SmallDisk() { setrlimit(RLIMIT_FSIZE, &before_); }
  SmallDisk(const SmallDisk&) = delete;
  SmallDisk& operator=(const SmallDisk&) = delete;

 private:
  rlimit before_{};
};

TEST_F(Files, AFullDiskLeavesTheOldFileAlone) {
  write_file(folder / "x", "old");
  std::string message;
  {
    const SmallDisk disk(1000);
    message = message_of([&] { write_file(folder / "x", std::string(100'000, 'n')); });
  }
  EXPECT_NE(message.find("room on the disk"), std::string::npos) << message;
  EXPECT_NE(message.find("\"x\""), std::string::npos) << "the file is named";
  EXPECT_EQ(read_file(folder / "x", "a file"), "old");
  EXPECT_EQ(std::distance(fs::directory_iterator(folder), {}), 1) << "nothing else is left behind";
}
#endif

TEST_F(Files, AFolderCannotTakeAFilesName) {
  write_file(folder / "x", "1");
  EXPECT_NE(message_of([&] { make_folder(folder / "x"); }), "");
  EXPECT_EQ(message_of([&] { make_folder(folder / "a" / "b"); }), "");
}

TEST_F(Files, AreListedByEndingInOrder) {
  for (const char* name : {"b.JPG", "a.jpeg", "c.png", "d.txt", ".hidden.png"})
    write_file(folder / name, "1");
  const auto found = files_ending(folder, {".jpg", ".jpeg", ".png"});
  ASSERT_EQ(found.size(), 3u);
  EXPECT_EQ(found[0].filename(), "a.jpeg");
  EXPECT_EQ(found[2].filename(), "c.png");
  EXPECT_NE(message_of([&] { files_ending(folder / "none", {".png"}); }), "");
}

}  // namespace
}  // namespace cowlcast::projector

#pragma once

#include <gtest/gtest.h>

#include "app/session/desk.h"
#include "core/document/document.h"
#include "tests/support/desk_application.h"

namespace inchwright::app {

/// Tests about a desk on which the sample of a whole kit lies, the click work.
class KitOnDesk : public testing::Test {
 protected:
  void SetUp() override {
    deskApplication();
    auto job = loadDocument(INCHWRIGHT_SOURCE_DIR "/samples/click_work.inchwright");
    ASSERT_TRUE(job.ok()) << job.error().text;
    desk.take(*job, {});
  }

  Desk desk;
};

}  // namespace inchwright::app

#include "projector/workbench/guide.h"

#include <QAbstractTextDocumentLayout>
#include <QFile>
#include <QHBoxLayout>
#include <QImage>
#include <QScrollBar>
#include <QShortcut>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextDocument>
#include <QTextFrame>
#include <QTextTable>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "projector/workbench/controls.h"
#include "projector/workbench/look/theme.h"
#include "projector/workbench/workplace.h"

/// The files that are linked in with this library must be made known by name.
static void make_guide_known() {
  Q_INIT_RESOURCE(guide);
}

namespace cowlcast::projector {
namespace {

constexpr int kChapterLevel = 2;  // of the heading; level 1 is the guide's own title

QString guide_text(const QString& language) {
  QFile file(QStringLiteral(":/guide/%1.md").arg(language));
  if (!file.exists()) file.setFileName(QStringLiteral(":/guide/en.md"));
  return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

std::vector<QTextBlock> chapter_blocks(const QTextDocument& text) {
  std::vector<QTextBlock> found;
  for (QTextBlock block = text.begin(); block.isValid(); block = block.next())
    if (block.blockFormat().headingLevel() == kChapterLevel) found.push_back(block);
  return found;
}

void give_lines(QTextTable& table) {
  QTextTableFormat format = table.format();
  format.setBorderCollapse(true);
  format.setBorderBrush(theme().line);
  format.setBorderStyle(QTextFrameFormat::BorderStyle_Solid);
  format.setCellPadding(grown(5));
  format.setBottomMargin(grown(14));
  table.setFormat(format);
}

/// Room between lines, paragraphs and chapters; Markdown comes without any.
void give_room(QTextDocument& text) {
  for (QTextBlock block = text.begin(); block.isValid(); block = block.next()) {
    QTextCursor cursor(block);
    QTextBlockFormat format = block.blockFormat();
    const bool heading = format.headingLevel() > 0;
    QTextTable* table = cursor.currentTable();
    if (table != nullptr) give_lines(*table);
    format.setLineHeight(130.0, QTextBlockFormat::ProportionalHeight);
    format.setTopMargin(heading ? grown(20) : 0);
    format.setBottomMargin(table != nullptr ? 0 : grown(10));
    cursor.setBlockFormat(format);
  }
}

double top_of(const QTextDocument& text, const QTextBlock& block) {
  return text.documentLayout()->blockBoundingRect(block).top();
}

}  // namespace

QVariant GuidePage::loadResource(int type, const QUrl& name) {
  if (type != QTextDocument::ImageResource) return QTextBrowser::loadResource(type, name);
  QImage picture(QStringLiteral(":/guide/") + name.path());
  const double room = viewport()->width() - 2.0 * document()->documentMargin();
  if (picture.isNull() || room < 1.0) return picture;
  picture.setDevicePixelRatio(std::max(1.0, picture.width() / room));
  return picture;
}

void GuidePage::resizeEvent(QResizeEvent* event) {
  QTextBrowser::resizeEvent(event);
  emit resized();
}

GuideWindow::GuideWindow(const QString& language, QWidget* parent)
    : QDialog(parent), list_(new QListWidget), page_(new GuidePage) {
  make_guide_known();
  text_ = guide_text(language);
  setWindowTitle(tr("Guide"));
  setWindowFlag(Qt::WindowMaximizeButtonHint);
  resize(grown(1040), grown(720));
  describe(*list_, tr("Chapters"), tr("Each place of the window has a chapter"));
  describe(*page_, tr("The guide's text"),
           tr("The wheel and Page Down scroll; F6 changes between text and chapters"));
  list_->setFixedWidth(grown(260));
  list_->setWordWrap(true);
  list_->setSpacing(grown(5));
  list_->setFrameShape(QFrame::NoFrame);
  page_->setOpenExternalLinks(false);
  page_->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
  page_->setFrameShape(QFrame::NoFrame);

  auto* row = new QHBoxLayout;
  row->addWidget(list_);
  row->addWidget(page_, 1);
  auto* close = make_button(tr("&Close the guide"), tr("Back to the window; Escape does the same"));
  auto* foot = new QHBoxLayout;
  foot->addStretch(1);
  foot->addWidget(close);
  auto* column = new QVBoxLayout(this);
  column->addLayout(row, 1);
  column->addLayout(foot);

  show_text();
  for (const QTextBlock& block : chapter_blocks(*page_->document())) list_->addItem(block.text());
  connect(close, &QPushButton::clicked, this, &QDialog::close);
  connect(list_, &QListWidget::itemClicked, this, [this] { go_to(list_->currentRow()); });
  connect(list_, &QListWidget::itemActivated, this, [this] { go_to(list_->currentRow()); });
  connect(page_->verticalScrollBar(), &QScrollBar::valueChanged, this, &GuideWindow::follow_page);
  fit_.setSingleShot(true);
  fit_.setInterval(0);
  connect(page_, &GuidePage::resized, &fit_, qOverload<>(&QTimer::start));
  connect(&fit_, &QTimer::timeout, this, [this] {
    const QString at = reading_;
    show_text();
    go_to(static_cast<int>(chapters().indexOf(at)));
  });
  auto* change = new QShortcut(QKeySequence(QStringLiteral("F6")), this);
  connect(change, &QShortcut::activated, this,
          [this] { page_->hasFocus() ? list_->setFocus() : page_->setFocus(); });
}

void GuideWindow::show_text() {
  page_->document()->setDefaultFont(letters(TextSize::plain));
  page_->document()->setDocumentMargin(grown(20));
  page_->setMarkdown(text_);
  give_room(*page_->document());
  QTextFrameFormat frame = page_->document()->rootFrame()->frameFormat();
  frame.setBottomMargin(0.7 * page_->viewport()->height());  // the last chapter, too, can stand at the top
  page_->document()->rootFrame()->setFrameFormat(frame);
}

void GuideWindow::open_at(Place place) {
  show();
  raise();
  activateWindow();
  page_->setFocus();
  reading_ = title_of(place);
  fit_.start();
}

QStringList GuideWindow::chapters() const {
  QStringList titles;
  for (int i = 0; i < list_->count(); ++i) titles += list_->item(i)->text();
  return titles;
}

QString GuideWindow::chapter() const {
  const QTextDocument& text = *page_->document();
  const double top = page_->verticalScrollBar()->value() + page_->fontMetrics().height();
  QString at;
  for (const QTextBlock& block : chapter_blocks(text))
    if (at.isEmpty() || top_of(text, block) <= top) at = block.text();
  return at;
}

void GuideWindow::go_to(int chapter) {
  const std::vector<QTextBlock> blocks = chapter_blocks(*page_->document());
  if (chapter < 0 || chapter >= static_cast<int>(blocks.size())) return;
  page_->verticalScrollBar()->setValue(
      static_cast<int>(top_of(*page_->document(), blocks[static_cast<size_t>(chapter)])));
  list_->setCurrentRow(chapter);
  reading_ = list_->item(chapter)->text();
}

void GuideWindow::follow_page() {
  if (fit_.isActive()) return;  // the page moved by itself
  reading_ = chapter();
  if (!list_->hasFocus()) list_->setCurrentRow(static_cast<int>(chapters().indexOf(reading_)));
}

}  // namespace cowlcast::projector

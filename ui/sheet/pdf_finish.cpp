#include "pdf_finish.h"

#include <QRegularExpression>
#include <map>
#include <optional>

namespace burrow {

namespace {

constexpr double points_per_mm = 72 / 25.4;

/// Any letters: UTF-16 with its mark, in hexadecimal digits.
QByteArray text_string(const QString& words) {
  QByteArray hex = "<FEFF";
  for (const QChar c : words)
    hex += QByteArray::number(static_cast<uint>(c.unicode()), 16).rightJustified(4, '0').toUpper();
  return hex + '>';
}

QByteArray reference(int object) {
  return QByteArray::number(object) + " 0 R";
}

/// The object that `/Name 12 0 R` points at.
std::optional<int> pointed_at(const QByteArray& dictionary, const char* name) {
  const QRegularExpression pattern(QStringLiteral("/%1\\s+(\\d+) 0 R").arg(QLatin1String(name)));
  const auto found = pattern.match(QString::fromLatin1(dictionary));
  return found.hasMatch() ? std::optional(found.captured(1).toInt()) : std::nullopt;
}

/// Reads what Qt wrote, and collects what is added or stands in for it.
class Update {
 public:
  explicit Update(const QByteArray& pdf) : pdf_(pdf) {
    const qsizetype start = pdf.lastIndexOf("startxref"), trailer = pdf.lastIndexOf("trailer", start);
    if (start < 0 || trailer < 0) return;
    table_ = pdf.mid(start + 9, 32).trimmed().split('\n').front().toLongLong();
    trailer_ = pdf.mid(trailer, start - trailer);
    const auto size = QRegularExpression(QStringLiteral("/Size (\\d+)")).match(QString::fromLatin1(trailer_));
    if (table_ > 0 && table_ < pdf.size() && size.hasMatch()) next_ = size.captured(1).toInt();
  }

  [[nodiscard]] bool readable() const { return next_ > 0; }
  [[nodiscard]] std::optional<int> of_trailer(const char* name) const { return pointed_at(trailer_, name); }

  /// All between "12 0 obj" and "endobj"; empty where there is none.
  [[nodiscard]] QByteArray object(int number) const {
    const QByteArray rows = pdf_.mid(table_);
    const qsizetype first = rows.indexOf('\n', rows.indexOf('\n') + 1) + 1;  // after "xref" and "0 12"
    bool ok = false;
    const qsizetype at = rows.mid(first + 20 * static_cast<qsizetype>(number), 10).toLongLong(&ok);
    const QByteArray head = QByteArray::number(number) + " 0 obj";
    if (!ok || pdf_.mid(at, head.size()) != head) return {};
    const qsizetype from = at + head.size(), to = pdf_.indexOf("endobj", from);
    return to < 0 ? QByteArray() : pdf_.mid(from, to - from).trimmed();
  }

  int add(const QByteArray& body) {
    objects_[next_] = body;
    return next_++;
  }
  int reserve() { return next_++; }
  void put(int number, const QByteArray& body) { objects_[number] = body; }

  [[nodiscard]] QByteArray all() const {
    QByteArray out = pdf_;
    if (!out.endsWith('\n')) out += '\n';
    QByteArray table = "xref\n";
    for (const auto& [number, body] : objects_) {
      table +=
          QByteArray::number(number) + " 1\n" + QByteArray::number(out.size()).rightJustified(10, '0') + " 00000 n \n";
      out += QByteArray::number(number) + " 0 obj\n" + body + "\nendobj\n";
    }
    const qsizetype start = out.size();
    QByteArray trailer = trailer_;
    trailer.replace(trailer.indexOf("/Size"), QByteArray("/Size ").size() + QByteArray::number(size()).size(), "");
    trailer.replace("<<", "<<\n/Size " + QByteArray::number(next_) + "\n/Prev " + QByteArray::number(table_));
    return out + table + trailer.trimmed() + "\nstartxref\n" + QByteArray::number(start) + "\n%%EOF\n";
  }

 private:
  [[nodiscard]] int size() const {
    return QRegularExpression(QStringLiteral("/Size (\\d+)")).match(QString::fromLatin1(trailer_)).captured(1).toInt();
  }

  const QByteArray& pdf_;
  qsizetype table_ = 0;
  QByteArray trailer_;
  int next_ = 0;
  std::map<int, QByteArray> objects_;
};

/// The pages as objects, in their order.
std::vector<int> pages_of(const Update& update, const QByteArray& catalog) {
  std::vector<int> all;
  const auto tree = pointed_at(catalog, "Pages");
  if (!tree) return all;
  const QByteArray node = update.object(*tree);
  const qsizetype from = node.indexOf("/Kids"), to = node.indexOf(']', from);
  if (from < 0 || to < 0) return all;
  auto kids =
      QRegularExpression(QStringLiteral("(\\d+) 0 R")).globalMatch(QString::fromLatin1(node.mid(from, to - from)));
  while (kids.hasNext()) all.push_back(kids.next().captured(1).toInt());
  return all;
}

struct Jump {
  QString words;
  int page = 0;
  double y_points = 0;
  std::vector<Jump> below{};
};

std::vector<Jump> jumps_of(const std::vector<Page>& pages, const std::vector<int>& objects) {
  std::vector<Jump> all;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const double height = pages[i].size_mm.height();
    if (!pages[i].name.isEmpty()) all.push_back({pages[i].name, objects[i], height * points_per_mm});
    for (const PageMark& mark : pages[i].marks)
      if (!all.empty()) all.back().below.push_back({mark.words, objects[i], (height - mark.y_mm) * points_per_mm});
  }
  return all;
}

/// Writes the entries below `parent`; gives the first, the last and how many.
QByteArray put_entries(Update& update, const std::vector<Jump>& jumps, int parent) {
  std::vector<int> numbers;
  for (std::size_t i = 0; i < jumps.size(); ++i) numbers.push_back(update.reserve());
  for (std::size_t i = 0; i < jumps.size(); ++i) {
    const Jump& jump = jumps[i];
    QByteArray body = "<<\n/Title " + text_string(jump.words) + "\n/Parent " + reference(parent) + "\n/Dest [" +
                      reference(jump.page) + " /XYZ 0 " + QByteArray::number(jump.y_points, 'f', 2) + " 0]\n";
    if (i > 0) body += "/Prev " + reference(numbers[i - 1]) + "\n";
    if (i + 1 < jumps.size()) body += "/Next " + reference(numbers[i + 1]) + "\n";
    if (!jump.below.empty()) {  // closed until somebody opens it
      body += put_entries(update, jump.below, numbers[i]);
      body += "/Count -" + QByteArray::number(static_cast<qsizetype>(jump.below.size())) + "\n";
    }
    update.put(numbers[i], body + ">>");
  }
  return "/First " + reference(numbers.front()) + "\n/Last " + reference(numbers.back()) + "\n";
}

QByteArray with_entry(QByteArray dictionary, const QByteArray& entry) {
  const qsizetype end = dictionary.lastIndexOf(">>");
  return end < 0 ? dictionary : dictionary.insert(end, entry + "\n");
}

/// Into the information and, where there is one, the description in XMP, which has to say the same.
void put_author(Update& update, const QByteArray& catalog, const QString& author) {
  if (const auto info = update.of_trailer("Info"))
    if (const QByteArray old = update.object(*info); !old.isEmpty())
      update.put(*info, with_entry(old, "/Author " + text_string(author)));
  const auto description = pointed_at(catalog, "Metadata");
  if (!description) return;
  const QByteArray old = update.object(*description);
  const qsizetype from = old.indexOf("stream"), to = old.lastIndexOf("endstream"), end = old.lastIndexOf("</rdf:RDF>");
  if (from < 0 || to < 0 || end < 0 || old.left(from).contains("/Filter")) return;
  QByteArray text = old.mid(from + 6, to - from - 6).trimmed();
  text.insert(
      text.lastIndexOf("</rdf:RDF>"),
      "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\"><dc:creator><rdf:Seq><rdf:li>" +
          author.toHtmlEscaped().toUtf8() + "</rdf:li></rdf:Seq></dc:creator></rdf:Description>\n");
  update.put(*description, "<<\n/Type /Metadata\n/Subtype /XML\n/Length " + QByteArray::number(text.size()) +
                               "\n>>\nstream\n" + text + "\nendstream");
}

}  // namespace

QByteArray finished_pdf(QByteArray pdf, const std::vector<Page>& pages, const QString& author) {
  Update update(pdf);
  if (!update.readable()) return pdf;
  const auto root = update.of_trailer("Root");
  const QByteArray catalog = root ? update.object(*root) : QByteArray();
  const std::vector<int> objects = catalog.isEmpty() ? std::vector<int>() : pages_of(update, catalog);
  if (objects.size() != pages.size()) return pdf;
  if (!author.isEmpty()) put_author(update, catalog, author);
  const std::vector<Jump> jumps = jumps_of(pages, objects);
  if (!jumps.empty()) {
    const int outline = update.reserve();
    const QByteArray entries = put_entries(update, jumps, outline);
    update.put(outline, "<<\n/Type /Outlines\n" + entries + "/Count " +
                            QByteArray::number(static_cast<qsizetype>(jumps.size())) + "\n>>");
    update.put(*root, with_entry(catalog, "/Outlines " + reference(outline) + "\n/PageMode /UseOutlines"));
  }
  return update.all();
}

}  // namespace burrow

package surfeit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * One Java source file as the rules about directions see it: its code without comments and texts, and every class it
 * names with its package, by import or inline.
 */
record SourceFile(Path path, String text, String code) {
    private static final Pattern COMMENT_OR_TEXT = Pattern.compile(
        "\"\"\"[\\s\\S]*?\"\"\"|\"(?:\\\\.|[^\"\\\\\\n])*+\"|'(?:\\\\.|[^'\\\\\\n])*+'|//[^\\n]*|/\\*[\\s\\S]*?\\*/");
    private static final Pattern IMPORT = Pattern.compile("(?m)^\\s*import\\s+(?:static\\s+)?([\\w.]+)");
    /** A class with its package in front; the first word is the beginning of a package in use. */
    private static final Pattern INLINE = Pattern.compile(
        "(?<![\\w.])(?:java|javax|jakarta|com|org|io|de|net|sun|jdk|picocli|kotlin|surfeit)"
            + "(?:\\.[a-z_]\\w*)*\\.[A-Z]\\w*");

    static SourceFile of(Path path, String text) {
        String code = COMMENT_OR_TEXT.matcher(text)
            .replaceAll(match -> match.group().startsWith("/") ? " " : Matcher.quoteReplacement("\"\""));
        return new SourceFile(path, text, code);
    }

    static List<SourceFile> allUnder(Path folder) throws IOException {
        List<SourceFile> files = new ArrayList<>();
        try (Stream<Path> paths = Files.walk(folder)) {
            for (Path path : paths.filter(file -> file.toString().endsWith(".java")).sorted().toList()) {
                files.add(of(path, Files.readString(path)));
            }
        }
        return files;
    }

    /** The folder in which it lies, as a package: {@code element} for {@code surfeit/element/Element.java}. */
    String projectPackage() {
        List<String> names = new ArrayList<>();
        path.iterator().forEachRemaining(name -> names.add(name.toString()));
        int root = names.lastIndexOf("surfeit");
        return root + 2 < names.size() ? names.get(root + 1) : "";
    }

    /** The folder in that package it lies in, "" for none: {@code sums} for {@code surfeit/segregation/sums/SumsIn.java}. */
    String part() {
        List<String> names = new ArrayList<>();
        path.iterator().forEachRemaining(name -> names.add(name.toString()));
        int inside = names.lastIndexOf(projectPackage()) + 1;
        return inside + 1 < names.size() ? names.get(inside) : "";
    }

    /** Other folders of its own package it uses, "" for the one above them. */
    Set<String> partsUsed() {
        Set<String> parts = new LinkedHashSet<>();
        String own = "surfeit." + projectPackage() + ".";
        namesUsed().stream().filter(name -> name.startsWith(own)).map(name -> name.substring(own.length()))
            .map(name -> Character.isLowerCase(name.charAt(0)) ? name.substring(0, name.indexOf('.')) : "")
            .filter(name -> !name.equals(part())).forEach(parts::add);
        return parts;
    }

    long lineCount() {
        return text.lines().count();
    }

    /** Every name from outside its own package that it imports or writes out in full. */
    Set<String> namesUsed() {
        Set<String> names = new LinkedHashSet<>();
        IMPORT.matcher(code).results().forEach(match -> names.add(match.group(1)));
        INLINE.matcher(code).results().forEach(match -> names.add(match.group()));
        return names;
    }

    /** Other packages of this project it uses. */
    Set<String> projectPackagesUsed() {
        Set<String> packages = new LinkedHashSet<>();
        namesUsed().stream().filter(name -> name.startsWith("surfeit."))
            .map(name -> name.split("\\.")[1]).filter(name -> !name.equals(projectPackage())).forEach(packages::add);
        return packages;
    }
}

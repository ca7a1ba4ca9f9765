package org.tableweather.analyzers.host;

import java.awt.Dimension;
import java.awt.Shape;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.DOMGroupManager;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGIDGenerator;
import org.w3c.dom.DOMImplementation;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** Paper that becomes an SVG which scales, names itself to a screen reader, and whose points say whose they are. */
final class LabelledSvg extends SVGGraphics2D {
    private static final String SVG = "http://www.w3.org/2000/svg";
    private final String idPrefix;

    private LabelledSvg(SVGGeneratorContext context, String idPrefix) {
        super(context, false);
        this.idPrefix = idPrefix;
    }

    /**
     * Empty paper.
     *
     * @param size in CSS pixels
     * @param idPrefix begins every id, so that two charts can stand in one page
     */
    static LabelledSvg paper(ChartSize size, String idPrefix) {
        SVGGeneratorContext context = SVGGeneratorContext.createDefault(emptyDocument());
        context.setComment(null);
        context.setPrecision(2);
        context.setIDGenerator(new PrefixedIds(idPrefix));
        LabelledSvg paper = new LabelledSvg(context, idPrefix);
        paper.setSVGCanvasSize(new Dimension(size.widthPx(), size.heightPx()));
        return paper;
    }

    private static Document emptyDocument() {
        try {
            DOMImplementation dom =
                    DocumentBuilderFactory.newInstance().newDocumentBuilder().getDOMImplementation();
            return dom.createDocument(SVG, "svg", null);
        } catch (ParserConfigurationException e) {
            throw new IllegalStateException("every Java platform can make an empty document", e);
        }
    }

    @Override
    public void fill(Shape shape) {
        if (!(shape instanceof PointMark mark)) {
            super.fill(shape);
            return;
        }
        Element inside = shapeConverter.toSVG(mark.outline());
        inside.setAttributeNS(null, "stroke", "none");
        inside.setAttributeNS(null, "class", "room-point");
        inside.setAttributeNS(null, "data-room", mark.room());
        inside.appendChild(textElement("title", mark.words()));
        domGroupManager.addElement(inside, DOMGroupManager.FILL);
    }

    /**
     * The picture as text.
     *
     * @param title what it shows
     * @param description the same for those who do not see it
     */
    String text(String title, String description) {
        Dimension size = getSVGCanvasSize();
        Element root = getRoot();
        root.setAttributeNS(null, "viewBox", "0 0 " + size.width + " " + size.height);
        root.setAttributeNS(null, "role", "img");
        root.setAttributeNS(null, "aria-labelledby", idPrefix + "title " + idPrefix + "desc");
        ((Element) root.getElementsByTagNameNS(SVG, "defs").item(0)).setAttributeNS(null, "id", idPrefix + "defs");
        Node first = root.getFirstChild();
        root.insertBefore(withId(textElement("title", title), "title"), first);
        root.insertBefore(withId(textElement("desc", description), "desc"), first);
        StringWriter text = new StringWriter();
        try {
            stream(root, text, false, false);
        } catch (IOException e) {
            throw new UncheckedIOException("a string can be written", e);
        }
        // without XML declaration and document type, which a page cannot hold
        return text.getBuffer().substring(text.getBuffer().indexOf("<svg"));
    }

    private Element withId(Element element, String id) {
        element.setAttributeNS(null, "id", idPrefix + id);
        return element;
    }

    private Element textElement(String name, String words) {
        Element element = getDOMFactory().createElementNS(SVG, name);
        element.appendChild(getDOMFactory().createTextNode(words));
        return element;
    }

    private static final class PrefixedIds extends SVGIDGenerator {
        private final String prefix;

        private PrefixedIds(String prefix) {
            this.prefix = prefix;
        }

        @Override
        public String generateID(String kind) {
            return prefix + super.generateID(kind);
        }
    }
}

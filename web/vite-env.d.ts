/// <reference types="vite/client" />

declare module 'pdfmake/build/pdfmake.min.js';
